package trip

import (
	"slices"

	"sumpter/domain/units"
)

// Allergen is something a member may be allergic to: the fourteen of
// Regulation (EU) 1169/2011 Annex II, wheat apart from other gluten cereals
// (the US list of 21 USC 321(qq) names it alone), the single nuts of the EU
// list, or any other word the leader writes. What a food does not declare is
// unknown, and unknown is not safe.
type Allergen string

// The allergens the program knows by name.
const (
	Gluten      Allergen = "gluten"
	Wheat       Allergen = "wheat"
	Crustaceans Allergen = "crustaceans"
	Eggs        Allergen = "eggs"
	Fish        Allergen = "fish"
	Peanuts     Allergen = "peanuts"
	Soybeans    Allergen = "soybeans"
	Milk        Allergen = "milk"
	Nuts        Allergen = "nuts"
	Celery      Allergen = "celery"
	Mustard     Allergen = "mustard"
	Sesame      Allergen = "sesame"
	Sulphites   Allergen = "sulphites"
	Lupin       Allergen = "lupin"
	Molluscs    Allergen = "molluscs"
	Almonds     Allergen = "almonds"
	Hazelnuts   Allergen = "hazelnuts"
	Walnuts     Allergen = "walnuts"
	Cashews     Allergen = "cashews"
	Pecans      Allergen = "pecans"
	BrazilNuts  Allergen = "brazil nuts"
	Pistachios  Allergen = "pistachios"
	Macadamias  Allergen = "macadamias"
)

// DeclaredAllergens lists what a label must tell: the EU fourteen and wheat.
func DeclaredAllergens() []Allergen {
	return []Allergen{
		Gluten, Wheat, Crustaceans, Eggs, Fish, Peanuts, Soybeans, Milk, Nuts,
		Celery, Mustard, Sesame, Sulphites, Lupin, Molluscs,
	}
}

// DeclaredWith lists those of them that a label must tell where people think in
// those units: the nine of 21 USC 321(qq) in the United States.
func DeclaredWith(system units.System) []Allergen {
	if system == units.US {
		return []Allergen{Wheat, Crustaceans, Eggs, Fish, Peanuts, Soybeans, Milk, Nuts, Sesame}
	}
	return DeclaredAllergens()
}

// KnownAllergens lists every allergen with a name of its own, single nuts last.
func KnownAllergens() []Allergen {
	return append(DeclaredAllergens(), Almonds, Hazelnuts, Walnuts, Cashews,
		Pecans, BrazilNuts, Pistachios, Macadamias)
}

// OwnWord tells whether the allergen is one the leader named: its name is
// theirs and is not translated.
func (a Allergen) OwnWord() bool { return !slices.Contains(KnownAllergens(), a) }

// usNames are the words of labels in the United States where they differ: 21
// USC 321(qq) names crustacean shellfish and tree nuts, the other two are their
// spelling.
var usNames = map[Allergen]string{
	Nuts: "tree nuts", Crustaceans: "crustacean shellfish", Sulphites: "sulfites", Molluscs: "mollusks",
}

// Named gives the English word that stands on labels where people think in
// those units.
func (a Allergen) Named(system units.System) string {
	if name, ok := usNames[a]; ok && system == units.US {
		return name
	}
	return string(a)
}

// Parent gives the wider allergen of which this one is a kind, if any.
func (a Allergen) Parent() (Allergen, bool) {
	switch a {
	case Wheat:
		return Gluten, true
	case Almonds, Hazelnuts, Walnuts, Cashews, Pecans, BrazilNuts, Pistachios, Macadamias:
		return Nuts, true
	default:
		return "", false
	}
}

// kinds lists the kinds of each wider allergen.
var kinds = func() map[Allergen][]Allergen {
	list := map[Allergen][]Allergen{}
	for _, kind := range KnownAllergens() {
		if parent, ok := kind.Parent(); ok {
			list[parent] = append(list[parent], kind)
		}
	}
	return list
}()

// Presence is the state of an allergen in a food.
type Presence string

// The four states. Only Free may be served to an allergic member.
const (
	Contains   Presence = "contains"
	MayContain Presence = "may contain"
	Free       Presence = "free"
	NotKnown   Presence = "unknown"
)

// Presence gives the state of an allergen in the food. A kind of nut is free
// where all nuts are; nuts are contained where one kind is; else what is not
// declared is not known. Wheat is not free where gluten is: what is called
// gluten-free may hold wheat whose gluten was taken out (21 CFR 101.91).
func (f *Food) Presence(allergen Allergen) Presence {
	own, declared := f.Allergens[allergen]
	if !declared {
		own = NotKnown
	}
	if parent, ok := allergen.Parent(); ok && allergen != Wheat && own == NotKnown && f.Allergens[parent] == Free {
		return Free
	}
	for _, kind := range kinds[allergen] {
		own = Worse(own, f.kindPresence(kind))
	}
	return own
}

// kindPresence is a declared state of a kind, or Free where nothing is said:
// silence about a kind adds nothing to what is said of the whole.
func (f *Food) kindPresence(kind Allergen) Presence {
	if state, ok := f.Allergens[kind]; ok && state != NotKnown {
		return state
	}
	return Free
}

// Worse gives the worse of two states: contains, may contain, unknown, free.
func Worse(a, b Presence) Presence {
	if presenceRank(a) >= presenceRank(b) {
		return a
	}
	return b
}

func presenceRank(p Presence) int {
	switch p {
	case Contains:
		return 3
	case MayContain:
		return 2
	case Free:
		return 0
	default:
		return 1
	}
}

// Diet is a way of eating that excludes foods.
type Diet string

// Diets the program knows; the leader may write others, which every food then
// has to declare. Gluten-free eating is the allergen gluten, not a diet.
const (
	Vegetarian  Diet = "vegetarian"
	Vegan       Diet = "vegan"
	Pescatarian Diet = "pescatarian"
	NoPork      Diet = "no pork"
	NoBeef      Diet = "no beef"
	Halal       Diet = "halal"
	Kosher      Diet = "kosher"
	LactoseFree Diet = "lactose-free"
	LowFODMAP   Diet = "low FODMAP"
)

// KnownDiets lists the diets with a name of their own.
func KnownDiets() []Diet {
	return []Diet{Vegetarian, Vegan, Pescatarian, NoPork, NoBeef, Halal, Kosher, LactoseFree, LowFODMAP}
}

// OwnWord tells whether the diet is one the leader named.
func (d Diet) OwnWord() bool { return !slices.Contains(KnownDiets(), d) }

// Suitability is whether a diet allows a food. Unknown does not allow it.
type Suitability string

// Whether a diet allows a food.
const (
	Suits        Suitability = "suits"
	DoesNotSuit  Suitability = "does not suit"
	SuitsUnknown Suitability = "unknown"
)

// Suitability gives whether the diet allows the food; what suits vegans also
// suits vegetarians and pescatarians and holds no pork or beef. Halal, kosher
// and low FODMAP are never derived.
func (f *Food) Suitability(diet Diet) Suitability {
	if own, ok := f.Diets[diet]; ok && own != SuitsUnknown {
		return own
	}
	for _, stricter := range impliedBy(diet) {
		if f.Diets[stricter] == Suits {
			return Suits
		}
	}
	return SuitsUnknown
}

// impliedBy lists the diets whose every food suits the given one as well.
func impliedBy(diet Diet) []Diet {
	switch diet {
	case Vegetarian, LactoseFree:
		return []Diet{Vegan}
	case Pescatarian, NoPork, NoBeef:
		return []Diet{Vegan, Vegetarian}
	default:
		return nil
	}
}

// Objection is a reason why a member must not be served a food.
type Objection struct {
	Allergen Allergen // the allergy that speaks against it, or
	Presence Presence
	Severe   bool
	Diet     Diet // the diet, or
	Suits    Suitability
	Dislike  bool // only that the member does not like it
}

// Dangerous tells an allergy or a diet from a mere dislike.
func (o Objection) Dangerous() bool { return !o.Dislike }

// Objections lists what speaks against serving the food to the member:
// allergies first, then diets, then dislikes. None means it may be served.
func (m *Member) Objections(food *Food) []Objection {
	var objections []Objection
	for _, allergy := range m.Allergies {
		if state := food.Presence(allergy.Allergen); state != Free {
			objections = append(objections, Objection{Allergen: allergy.Allergen, Presence: state, Severe: allergy.Severe})
		}
	}
	for _, diet := range m.Diets {
		if suits := food.Suitability(diet); suits != Suits {
			objections = append(objections, Objection{Diet: diet, Suits: suits})
		}
	}
	for _, disliked := range m.Dislikes {
		if disliked == food.ID {
			objections = append(objections, Objection{Dislike: true})
		}
	}
	return objections
}
