// Package wholepacks buys what is needed in whole packages: at least cost,
// then with least left over, then in fewest packages.
//
// One item has a need in grams for each of several deadlines (the morning the
// trip starts, the posting day of a box). At each deadline some packages are
// on sale, each with its net weight, price and stock. What is bought for one
// deadline and not needed there passes on to the next if the item keeps, and
// is lost if it does not:
//
//	surplus_0 = 0
//	surplus_k = [keeps] surplus_{k-1} + sum_p net_p y_pk - need_k >= 0
//	0 <= y_pk <= available_pk, whole
//	minimise lexicographically (sum price_pk y_pk, sum net_p y_pk, sum y_pk)
//
// [Solve] answers this exactly for one item by dynamic programming over the
// grams bought so far, in steps of the greatest common divisor of the nets
// (a covering knapsack; Martello and Toth, Knapsack Problems, 1990, from
// memory). A price may fall from a number bought at once on. Where several
// deadlines of what spoils share one stock, branch and bound shares it out.
// [SolveBasket] ties items together through shops that cost a visit or ask for
// a least order, by branch and bound over the visits, a Lagrangian bound on the
// least orders and labels over the items; [Unbeaten] also tells what fewer visits cost.
//
// Money is in whole cents, mass in whole grams; nothing is a float, so the
// same input gives the same answer everywhere.
package wholepacks
