// Package prints lists every paper that can be printed and draws it, for the
// window's preview, its saved files and the command alike.
package prints

import (
	"context"
	"fmt"
	"io"
	"slices"
	"strings"

	"sumpter/domain/bags"
	"sumpter/domain/packing"
	"sumpter/domain/plan"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/exporter/cautions"
	"sumpter/exporter/print/booklet"
	"sumpter/exporter/print/boxlabels"
	"sumpter/exporter/print/fonts"
	"sumpter/exporter/print/labelcheck"
	"sumpter/exporter/print/labels"
	"sumpter/exporter/print/overview"
	"sumpter/exporter/print/packlist"
	"sumpter/exporter/print/page"
	"sumpter/exporter/print/pdf"
	"sumpter/exporter/print/pocketcard"
	"sumpter/exporter/print/press"
	"sumpter/exporter/print/shoplist"
	"sumpter/exporter/print/typeset"
)

// Kind is one paper. Its text is stable and fit for a file.
type Kind string

// The papers in the order a leader needs them.
const (
	Shopping  Kind = "shopping-list"
	LabelRead Kind = "labels-to-read"
	Labels    Kind = "bag-labels"
	Rounds    Kind = "packing-bags"
	Weighing  Kind = "packing-weighing"
	BoxLabels Kind = "box-labels"
	Boxes     Kind = "box-contents"
	Cards     Kind = "pocket-cards"
	RestCards Kind = "pocket-cards-rest"
	Booklet   Kind = "recipe-booklet"
	RestBook  Kind = "recipe-booklet-rest"
	Overview  Kind = "for-those-at-home"
	Cautions  Kind = "cautions"
)

// Kinds lists every paper.
func Kinds() []Kind {
	return []Kind{Shopping, LabelRead, Labels, Rounds, Weighing, BoxLabels, Boxes, Cards, RestCards, Booklet, RestBook, Overview, Cautions}
}

// Name is what people call the paper.
func (k Kind) Name() prose.Text {
	switch k {
	case Shopping:
		return prose.Say("Shopping list")
	case LabelRead:
		return prose.Say("Labels to read")
	case Labels:
		return prose.Say("Bag labels")
	case Rounds:
		return prose.Say("Packing night: bag by bag")
	case Weighing:
		return prose.Say("Packing night: weighing")
	case BoxLabels:
		return prose.Say("Box labels")
	case Boxes:
		return prose.Say("What is in which box")
	case Cards:
		return prose.Say("Pocket cards")
	case RestCards:
		return prose.Say("Pocket cards for the rest of the way")
	case Booklet:
		return prose.Say("Recipe booklet")
	case RestBook:
		return prose.Say("Recipe booklet for the rest of the way")
	case Overview:
		return prose.Say("For those at home")
	default:
		return prose.Say("Cautions")
	}
}

// About says what the paper is for.
func (k Kind) About() prose.Text {
	switch k {
	case Shopping:
		return prose.Say("What to buy where, aisle by aisle, with boxes to tick")
	case LabelRead:
		return prose.Say("Each food with its allergens as entered, to compare with the package when it is bought and when it is opened")
	case Labels:
		return prose.Say("A label for each bag: contents, allergens, cooking, carrier, how long it keeps")
	case Rounds:
		return prose.Say("The bags of each round with a box to tick for each station")
	case Weighing:
		return prose.Say("One food at a time into many bags")
	case BoxLabels:
		return prose.Say("Two on a page: address, when it is fetched, where it goes back to")
	case Boxes:
		return prose.Say("The bags of each parcel, and what is bought on the way")
	case Cards:
		return prose.Say("For each member, to fold twice: what I carry, what we eat, who has what, allergies, emergencies")
	case RestCards:
		return prose.Say("As things stand after what happened on the way: what I hand over and carry from this morning on, what we eat, what is other than packed")
	case RestBook:
		return prose.Say("What is eaten from this morning on, with the amounts, water and minutes of each pot as it now is")
	case Booklet:
		return prose.Say("Every recipe with the amounts, water and minutes of each pot")
	case Overview:
		return prose.Say("One page: route, people, boxes, when to call for help. Nothing of anybody's health")
	default:
		return prose.Say("What the plan does not decide")
	}
}

// Has tells whether a plan has anything to print of a paper.
func Has(p *plan.Plan, kind Kind) bool {
	switch kind {
	case Labels:
		return len(p.Bags.Bags) > 0
	case BoxLabels, Boxes:
		return len(p.Resupply.Boxes) > 0
	case Cards:
		return p.Trip != nil && len(p.Trip.Crew) > 0
	case RestCards, RestBook:
		return OnWay(p)
	default:
		return true
	}
}

// Choice is something that can be chosen for a paper.
type Choice uint8

// The choices there are.
const (
	ByDay Choice = iota
	ByMember
	ByStation
	ByGrid
	ByRecipe
)

// Takes tells whether a choice matters for the paper.
func (k Kind) Takes(choice Choice) bool {
	switch choice {
	case ByDay:
		return k == Labels || k == Booklet || k == RestBook
	case ByMember:
		return k == Labels || k == Cards || k == RestCards
	case ByStation:
		return k == Rounds
	case ByRecipe:
		return k == Booklet
	default:
		return k == Labels
	}
}

// Options are what the reader chose. The zero Options print everything for an
// English reader on A4, in colour, with the bundled fonts alone.
type Options struct {
	Reader      prose.Reader
	Language    string // BCP 47, of the Reader; none: English
	Paper       press.Paper
	Black       bool              // one black ink
	SystemFonts bool              // look there for letters that the bundled fonts lack
	Days        []int             // none: all
	Members     []trip.MemberID   // none: all
	Recipes     []trip.RecipeID   // none: all that are served; else only their cards
	Stations    []packing.Station // none: all
	Grid        labels.Grid       // of the label sheets; none: plain paper to cut
	Start       int               // first free label of the first sheet, from 1; 0 is 1
	Morning     int               // first day of the rest of the way; 0: the last of which anything was noted
	Unpacked    bool              // labels only of bags that packing night has not ticked off
}

// Print is a paper that was drawn.
type Print struct {
	Kind    Kind
	Pages   []page.Page // none: there is nothing of this kind
	Missing []rune      // letters that no font has; a mark stands for them
	about   pdf.About
}

// Draw draws a paper. Progress, if not nil, hears from time to time which part
// of it is done, from 0 to 1.
func Draw(ctx context.Context, p *plan.Plan, kind Kind, options Options, progress func(part float64)) (*Print, error) {
	if options.Paper == (press.Paper{}) {
		options.Paper = press.A4
	}
	if options.Grid == (labels.Grid{}) {
		options.Grid = labels.Usual(options.Paper).Grid
	}
	shelf, inks := fonts.Bundled(), press.Colour
	if options.SystemFonts {
		shelf = fonts.WithSystem()
	}
	if options.Black {
		inks = press.Black
	}
	made := press.New(p, shelf, options.Reader, options.Paper, inks)
	pages, err := draw(ctx, made, kind, &options, progress)
	if err != nil {
		return nil, err
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	language := options.Language
	if language == "" {
		language = "en"
	}
	title := made.TripTitle() + ": " + made.Tell(kind.Name())
	return &Print{Kind: kind, Pages: pages, Missing: made.Set.Missing(), about: pdf.About{Title: title, Language: language}}, nil
}

func draw(ctx context.Context, p *press.Press, kind Kind, options *Options, progress func(part float64)) ([]page.Page, error) {
	switch kind {
	case Shopping:
		return shoplist.Draw(p), nil
	case LabelRead:
		return labelcheck.Draw(p), nil
	case Labels:
		return drawLabels(ctx, p, options, progress)
	case Rounds:
		stations := options.Stations
		if len(stations) == 0 {
			stations = packing.Stations()
		}
		return packlist.Rounds(p, stations), nil
	case Weighing:
		return packlist.Weighing(p), nil
	case BoxLabels:
		return boxlabels.Draw(p), nil
	case Boxes:
		return packlist.Boxes(p), nil
	case Cards:
		return pocketcard.Draw(p, options.chosen(p)), nil
	case RestCards, RestBook:
		return drawRest(ctx, p, kind, options)
	case Booklet:
		return booklet.Draw(p, options.day, options.Recipes), nil
	case Overview:
		return overview.Draw(p), nil
	case Cautions:
		return drawCautions(p), nil
	default:
		return nil, fmt.Errorf("there is no paper called %q", kind)
	}
}

func (o *Options) day(day int) bool { return len(o.Days) == 0 || slices.Contains(o.Days, day) }

// dayOf tells whether a bag is eaten from on one of the days.
func (o *Options) dayOf(bag *bags.Bag) bool {
	return len(o.Days) == 0 || slices.ContainsFunc(o.Days, bag.EatenOn)
}

func (o *Options) member(id trip.MemberID) bool {
	return len(o.Members) == 0 || slices.Contains(o.Members, id)
}

// chosen lists the chosen members in the order of the crew.
func (o *Options) chosen(p *press.Press) []trip.MemberID {
	var list []trip.MemberID
	for i := range p.Trip.Crew {
		if o.member(p.Trip.Crew[i].ID) {
			list = append(list, p.Trip.Crew[i].ID)
		}
	}
	return list
}

func drawLabels(ctx context.Context, p *press.Press, options *Options, progress func(part float64)) ([]page.Page, error) {
	list := chosenBags(p, options)
	var heard func(int)
	if progress != nil {
		heard = func(done int) { progress(float64(done) / float64(len(list))) }
	}
	return labels.Draw(ctx, p, options.Grid, list, max(1, options.Start), heard)
}

// chosenBags lists the bags whose labels are printed, in the order they are eaten:
// those of the days, that a member carries or eats alone.
func chosenBags(p *press.Press, options *Options) []*bags.Bag {
	var list []*bags.Bag
	for i := range p.Plan.Bags.Bags {
		bag := &p.Plan.Bags.Bags[i]
		noted := p.Trip.Progress.PackedBag(bag.Key)
		if options.dayOf(bag) && options.has(p, bag) && !(options.Unpacked && noted != nil && noted.Done) {
			list = append(list, bag)
		}
	}
	return list
}

func (o *Options) has(p *press.Press, bag *bags.Bag) bool {
	if len(o.Members) == 0 || bag.Member != 0 && o.member(bag.Member) {
		return true
	}
	for _, carrier := range p.Carriers(bag.Key) {
		if o.member(carrier.Member) {
			return true
		}
	}
	return false
}

func drawCautions(p *press.Press) []page.Page {
	flow := p.Flow(press.Layout{Title: p.Tell(prose.Say("Cautions")), Note: p.Tell(cautions.Preface()), Columns: 2})
	press.Cautions(p, flow, cautions.Topics()...)
	return flow.Finish()
}

// Note says which letters could not be printed, and what to do; nothing if all
// could.
func (p *Print) Note() prose.Text {
	if len(p.Missing) == 0 {
		return prose.Text{}
	}
	const most = 12
	var codes []string
	for i, letter := range p.Missing {
		if i == most {
			codes = append(codes, "…")
			break
		}
		codes = append(codes, fmt.Sprintf("%c (%U)", letter, letter))
	}
	return prose.Plural(len(p.Missing),
		prose.Say("No font has the letter %s: %s stands for it on paper. Install a font that has it.", strings.Join(codes, ", "), typeset.Mark),
		prose.Say("No font has these letters: %s. On paper %s stands for them. Install a font that has them.", strings.Join(codes, ", "), typeset.Mark))
}

// Write writes the paper as a PDF.
func (p *Print) Write(ctx context.Context, w io.Writer) error {
	return pdf.Write(ctx, w, p.about, p.Pages)
}
