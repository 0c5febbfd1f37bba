// Package cautions holds the usual cautions of feeding a group on the trail,
// in one wording for every paper. They go with the plan because the work can
// hurt people; they defer to local rules and licensed practice.
package cautions

import "sumpter/domain/prose"

// Preface stands above the cautions.
func Preface() prose.Text {
	return prose.Say("This plan reckons with published figures and what you entered. It does not replace local rules, the label on the package, " +
		"a doctor's word, a stove's manual, or somebody on the spot with judgement. Unknown is never safe.")
}

// Topic is a group of cautions.
type Topic struct {
	Title prose.Text
	Rules []Rule
}

// Rule is one caution.
type Rule struct {
	Short  prose.Text
	Text   prose.Text
	Source prose.Text // published source, or "common practice, no source"
}

var commonPractice = prose.Say("common practice, no source")

// Topics lists all cautions, those that hurt fastest first.
func Topics() []Topic {
	return []Topic{Emergency(), Allergies(), Stoves(), FoodSafety(), Water(), Animals(), Loads(), People()}
}

// Emergency gives the cautions for when something has gone wrong.
func Emergency() Topic {
	return Topic{prose.Say("When something goes wrong"), []Rule{
		{prose.Say("Reaction to food"), prose.Say("Hard breathing, a swelling face or throat, or collapse after eating: give the emergency medicine at once, as the person's doctor has laid down, and call rescue. The person lies or sits, is never alone and does not walk on."), commonPractice},
		{prose.Say("Near a stove"), prose.Say("Headache, sickness or drowsiness: stove off, everybody into fresh air, call rescue. Carbon monoxide has no smell."), commonPractice},
		{prose.Say("Ill from food"), prose.Say("Nobody eats more from that bag; keep it and its label apart. Who is ill drinks, does not cook, and turns back if it does not get better."), commonPractice},
		{prose.Say("Call rescue"), prose.Say("Say where you are, what happened, how many are hurt, what weather and ground there is. Then wait for questions. 112 works in Europe, 911 in North America; elsewhere ask before the trip."), commonPractice},
	}}
}

// Allergies gives the cautions about allergies.
func Allergies() Topic {
	return Topic{prose.Say("Allergies"), []Rule{
		{prose.Say("Read every label again"), prose.Say("Recipes of products change. Compare each label with the allergens in this plan when you buy, and once more when you pack. A missing \"may contain\" proves nothing."), prose.Say("Regulation (EU) 1169/2011 leaves it voluntary")},
		{prose.Say("Ask each person"), prose.Say("Let everybody with an allergy read their own bags and the dishes of their group before the trip, and say whether traces harm."), commonPractice},
		{prose.Say("Keep apart"), prose.Say("Pack the strictest rounds first, with washed hands, table, scoops and scale. Own pot, spoon and cloth. Heat and rinsing do not remove an allergen."), commonPractice},
		{prose.Say("Medicine"), prose.Say("Know who carries the emergency medicine, where, and a second person who can give it. Severe reactions need emergency medicine and rescue at once, by the plan of the person's doctor."), commonPractice},
	}}
}

// Stoves gives the cautions about stoves and fuel.
func Stoves() Topic {
	return Topic{prose.Say("Stoves and carbon monoxide"), []Rule{
		{prose.Say("Never inside"), prose.Say("Never cook in a tent, a porch that is closed, a vehicle or a snow shelter: carbon monoxide has no smell and kills in minutes; tents burn in seconds."), commonPractice},
		{prose.Say("Follow the manual"), prose.Say("Use the stove, its fuel and its windscreen as the maker says. Do not wrap a canister; do not put a pot over it that is too large. Change canisters outside, away from flames."), commonPractice},
		{prose.Say("Fire bans"), prose.Say("Ask on the day. A ban often covers stoves too. Where this plan says no flame, the meal must work cold."), commonPractice},
		{prose.Say("Fuel on the way"), prose.Say("Fuel does not travel in ordinary post nor on aircraft. Buy it on the spot; carry empty canisters out."), prose.Say("dangerous-goods rules of the carrier apply")},
		{prose.Say("Hot water"), prose.Say("Cook sitting low and apart from the way; most injuries at stoves are scalds."), commonPractice},
	}}
}

// FoodSafety gives the cautions about food that spoils.
func FoodSafety() Topic {
	return Topic{prose.Say("Food safety"), []Rule{
		{prose.Say("Two hours, one hour"), prose.Say("Food that must be kept cold is to be thrown away after 2 hours between 4 and 60 °C (40 and 140 °F), after 1 hour above 32 °C (90 °F)."), prose.Say("USDA FSIS, danger zone")},
		{prose.Say("When in doubt"), prose.Say("Throw it out. Food that spoiled may look and smell well. Bag by bag: a torn or wet bag is not eaten."), commonPractice},
		{prose.Say("Leftovers"), prose.Say("Cook what is eaten at once. Cooked leftovers are not kept on the trail."), prose.Say("FDA Food Code 3-501.14: 57 to 21 °C in 2 h, to 5 °C in 6 h in all")},
		{prose.Say("Hands"), prose.Say("Wash with soap before packing, cooking and eating, and after the toilet. Who is ill with vomiting or diarrhoea neither packs nor cooks."), prose.Say("FDA Food Code 2-301.14 and 2-201.11, from memory")},
		{prose.Say("Beans"), prose.Say("Boil dried kidney beans hard for the time on the package; soaking and slow cooking are not enough. Height makes it longer."), commonPractice},
	}}
}

// Water gives the cautions about water from the land.
func Water() Topic {
	return Topic{prose.Say("Water"), []Rule{
		{prose.Say("Treat all of it"), prose.Say("Boil, filter or disinfect all water from the land, as the maker of the filter or tablets says. Boiling: 1 minute rolling, 3 minutes above 2,000 m (6,500 ft)."), prose.Say("CDC, making water safe, from memory")},
		{prose.Say("What no treatment removes"), prose.Say("Filters, tablets and boiling do not take out metals, farm poisons or the poison of blue-green algae. Take other water."), commonPractice},
		{prose.Say("Not too much"), prose.Say("More than about 1.4 L (1.5 qt) an hour or 11.4 L (12 qt) a day is dangerous as well: drink with food and salt."), prose.Say("US Army TB MED 507")},
	}}
}

// Animals gives the cautions about animals and food.
func Animals() Topic {
	return Topic{prose.Say("Animals"), []Rule{
		{prose.Say("Store all that smells"), prose.Say("Food, rubbish, toothpaste and pots in the container or sack the area prescribes, away from where you sleep. Ask the land's keeper which is required."), commonPractice},
		{prose.Say("Never feed, never bury"), prose.Say("Carry all rubbish and leftovers out. Burnt and buried food is dug up."), commonPractice},
	}}
}

// Loads gives the cautions about loads.
func Loads() Topic {
	return Topic{prose.Say("Loads"), []Rule{
		{prose.Say("A share is advice"), prose.Say("The fair split knows body mass and what you entered, not knees, backs or bad nights. Who says it is too much is right; hand over and plan again."), commonPractice},
		{prose.Say("The young, the old, the ill"), prose.Say("Children and who is pregnant, ill or newly recovered: ask a doctor first. For children, advice is 10 to 20 %% of body mass."), prose.Say("American Academy of Pediatrics; American Occupational Therapy Association")},
	}}
}

// People gives the cautions about who is fed.
func People() Topic {
	return Topic{prose.Say("People"), []Rule{
		{prose.Say("Needs differ"), prose.Say("Energy equations are good to some hundred kcal a day for a group, less for one person. Watch who is cold, slow, cross or losing weight and give them more."), commonPractice},
		{prose.Say("Illness and diets"), prose.Say("Diabetes, kidney or heart disease, eating disorders and pregnancy need a doctor's or dietitian's word, not this plan."), commonPractice},
		{prose.Say("Turn round in time"), prose.Say("Keep the emergency reserve for emergencies, and leave the plan of the route with somebody at home."), commonPractice},
	}}
}
