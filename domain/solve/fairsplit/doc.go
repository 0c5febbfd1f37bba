// Package fairsplit shares out whole pieces over the people who carry them, so
// that on no day anybody carries more than their part of the load.
//
// It exists because nobody can do this by hand: each piece has one carrier for
// the whole leg, pieces get lighter as days pass, and packs, allergies and rules
// about lost packs limit who may carry what. It knows nothing of food: only
// grams, millilitres, days, and whole numbers for strength.
//
// # What is fair
//
// A member's burden on a day is load divided by strength. A split is better than
// another if, in this order,
//
//  1. the largest burden of the first morning, R1, is smaller,
//  2. with R1 within 0.5 % of the best known, the mean over the days of each
//     day's largest burden, weighted by the day's hours, S, is smaller,
//  3. in a re-split, fewer pieces change their carrier, S staying within a
//     tolerance,
//  4. the burdens of the first morning, sorted from the largest, are smaller.
//
// Where no split keeps every limit, passing limits by less counts before all of these.
//
// Every result comes with lower bounds for R1 and S that were found apart from
// the search, so that the distance from the best possible split is known.
//
// # How it searches
//
// Whole splits are annealed and exchanged towards bounds from relaxations (hunt). A
// small crew's split that is not yet proven is then taken apart: by who has what weighs
// on several days (gear), and below that day by day, in lists of whole bags
// (layers), led to where most splits are likely (odds, beam). A re-split goes back
// from the fairest towards those who had the pieces (resplit, homeward).
//
// # Determinism
//
// Burdens are compared as integers. Floats only lead the search; they are rounded
// product by product and use no exponential or logarithm of the processor's, so that
// it goes the same way on all. Work is limited by a count of steps, never by
// a clock, and the answer does not depend on the number of processors. Members
// and pieces are named by their places in the slices of [Problem]; ties go to the
// lower place.
package fairsplit
