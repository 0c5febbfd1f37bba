// Package cautions holds the usual cautions of feeding a group on the trail,
// in one wording for every paper. They go with the plan because the work can
// hurt people; they defer to local rules and licensed practice.
package cautions

// Preface stands above the cautions.
const Preface = "This plan reckons with published figures and what you entered. It does not replace local rules, the label on the package, " +
	"a doctor's word, a stove's manual, or somebody on the spot with judgement. Unknown is never safe."

// Topic is a group of cautions.
type Topic struct {
	Title string
	Rules []Rule
}

// Rule is one caution.
type Rule struct {
	Short  string
	Text   string
	Source string // published source, or "common practice, no source"
}

const commonPractice = "common practice, no source"

// Topics lists all cautions, those that hurt fastest first.
func Topics() []Topic {
	return []Topic{allergy(), stoves(), foodSafety(), water(), wildlife(), loads(), people()}
}

func allergy() Topic {
	return Topic{"Allergies", []Rule{
		{"Read every label again", "Recipes of products change. Compare each label with the allergens in this plan when you buy, and once more when you pack. A missing \"may contain\" proves nothing.", "Regulation (EU) 1169/2011 leaves it voluntary"},
		{"Ask each person", "Let everybody with an allergy read their own bags and the dishes of their group before the trip, and say whether traces harm.", commonPractice},
		{"Keep apart", "Pack the strictest rounds first, with washed hands, table, scoops and scale. Own pot, spoon and cloth. Heat and rinsing do not remove an allergen.", commonPractice},
		{"Medicine", "Know who carries the emergency medicine, where, and a second person who can give it. Severe reactions need emergency medicine and rescue at once, by the plan of the person's doctor.", commonPractice},
	}}
}

func stoves() Topic {
	return Topic{"Stoves and carbon monoxide", []Rule{
		{"Never inside", "Never cook in a tent, a porch that is closed, a vehicle or a snow shelter: carbon monoxide has no smell and kills in minutes; tents burn in seconds.", commonPractice},
		{"Follow the manual", "Use the stove, its fuel and its windscreen as the maker says. Do not wrap a canister; do not put a pot over it that is too large. Change canisters outside, away from flames.", commonPractice},
		{"Fire bans", "Ask on the day. A ban often covers stoves too. Where this plan says no flame, the meal must work cold.", commonPractice},
		{"Fuel on the way", "Fuel does not travel in ordinary post nor on aircraft. Buy it on the spot; carry empty canisters out.", "dangerous-goods rules of the carrier apply"},
		{"Hot water", "Cook sitting low and apart from the way; most injuries at stoves are scalds.", commonPractice},
	}}
}

func foodSafety() Topic {
	return Topic{"Food safety", []Rule{
		{"Two hours, one hour", "Food that must be kept cold is to be thrown away after 2 hours between 4 and 60 °C (40 and 140 °F), after 1 hour above 32 °C (90 °F).", "USDA FSIS, danger zone"},
		{"When in doubt", "Throw it out. Food that spoiled may look and smell well. Bag by bag: a torn or wet bag is not eaten.", commonPractice},
		{"Leftovers", "Cook what is eaten at once. Cooked leftovers are not kept on the trail.", "FDA Food Code 3-501.14: 57 to 21 °C in 2 h, to 5 °C in 6 h in all"},
		{"Hands", "Wash with soap before packing, cooking and eating, and after the toilet. Who is ill with vomiting or diarrhoea neither packs nor cooks.", "FDA Food Code 2-301.14 and 2-201.11, from memory"},
		{"Beans", "Boil dried kidney beans hard for the time on the package; soaking and slow cooking are not enough. Height makes it longer.", commonPractice},
	}}
}

func water() Topic {
	return Topic{"Water", []Rule{
		{"Treat all of it", "Boil, filter or disinfect all water from the land, as the maker of the filter or tablets says. Boiling: 1 minute rolling, 3 minutes above 2,000 m (6,500 ft).", "CDC, making water safe, from memory"},
		{"What no treatment removes", "Filters, tablets and boiling do not take out metals, farm poisons or the poison of blue-green algae. Take other water.", commonPractice},
		{"Not too much", "More than about 1.4 L (1.5 qt) an hour or 11.4 L (12 qt) a day is dangerous as well: drink with food and salt.", "US Army TB MED 507"},
	}}
}

func wildlife() Topic {
	return Topic{"Animals", []Rule{
		{"Store all that smells", "Food, rubbish, toothpaste and pots in the container or sack the area prescribes, away from where you sleep. Ask the land's keeper which is required.", commonPractice},
		{"Never feed, never bury", "Carry all rubbish and leftovers out. Burnt and buried food is dug up.", commonPractice},
	}}
}

func loads() Topic {
	return Topic{"Loads", []Rule{
		{"A share is advice", "The fair split knows body mass and what you entered, not knees, backs or bad nights. Who says it is too much is right; hand over and plan again.", commonPractice},
		{"The young, the old, the ill", "Children and who is pregnant, ill or newly recovered: ask a doctor first. For children, advice is 10 to 20 % of body mass.", "American Academy of Pediatrics; American Occupational Therapy Association"},
	}}
}

func people() Topic {
	return Topic{"People", []Rule{
		{"Needs differ", "Energy equations are good to some hundred kcal a day for a group, less for one person. Watch who is cold, slow, cross or losing weight and give them more.", commonPractice},
		{"Illness and diets", "Diabetes, kidney or heart disease, eating disorders and pregnancy need a doctor's or dietitian's word, not this plan.", commonPractice},
		{"Turn round in time", "Keep the emergency reserve for emergencies, and leave the plan of the route with somebody at home.", commonPractice},
	}}
}
