package shopping

import (
	"cmp"
	"math/bits"
	"slices"

	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Account is what a member paid for the trip and what their part of it costs.
type Account struct {
	Member trip.MemberID `json:"member"`
	Paid   units.Money   `json:"paid"`
	Share  units.Money   `json:"share"`
}

// Payment settles accounts.
type Payment struct {
	From   trip.MemberID `json:"from"`
	To     trip.MemberID `json:"to"`
	Amount units.Money   `json:"amount"` // above 0
}

// Shares splits an amount over the crew by days present, to the cent: what
// does not divide goes to the largest remainders, ties to the lower ID. A trip
// on which nobody is present gives nobody anything.
func Shares(t *trip.Trip, total units.Money) []Account {
	all := personDays(t)
	list := make([]Account, 0, len(t.Crew))
	rest := make([]units.Money, 0, len(t.Crew))
	left := total
	for i := range t.Crew {
		days := units.Money(daysOf(t, &t.Crew[i]))
		a := Account{Member: t.Crew[i].ID}
		if all > 0 {
			a.Share = total * days / all
			rest = append(rest, total*days%all)
		}
		left -= a.Share
		list = append(list, a)
	}
	if all == 0 {
		return list
	}
	order := make([]int, len(list))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int {
		return cmp.Or(cmp.Compare(rest[b], rest[a]), cmp.Compare(list[a].Member, list[b].Member))
	})
	for _, i := range order[:left] {
		list[i].Share++
	}
	return list
}

// Reckoning is everybody's money: their part of the whole cost, what they paid, and
// who pays whom so that all have paid their part of what was paid.
type Reckoning struct {
	Members  []MemberMoney
	Paid     units.Money // by members
	Unnamed  units.Money // paid, and nobody noted by whom: it is not settled
	Payments []Payment   // as few as can be
}

// MemberMoney is one member's part.
type MemberMoney struct {
	Member trip.MemberID
	Days   int         // they are there
	Part   units.Money // their part of what all of it is expected to come to
	Paid   units.Money // so far
	Owed   units.Money // their part of what members paid so far
}

// Reckon works out everybody's money from the purchases noted so far and what
// all of it is expected to come to.
func Reckon(t *trip.Trip, expected units.Money) Reckoning {
	var k Reckoning
	by := map[trip.MemberID]units.Money{}
	for i := range t.Progress.Purchases {
		p := &t.Progress.Purchases[i]
		amount := p.Paid.Or(0)
		if p.By == 0 {
			k.Unnamed += amount
			continue
		}
		by[p.By] += amount
		k.Paid += amount
	}
	parts, accounts := Shares(t, expected), Shares(t, k.Paid)
	for i := range accounts {
		a := &accounts[i]
		a.Paid = by[a.Member]
		k.Members = append(k.Members, MemberMoney{
			Member: a.Member, Days: daysOf(t, &t.Crew[i]), Part: parts[i].Share, Paid: a.Paid, Owed: a.Share,
		})
	}
	// Accounts that do not add up are those of a trip on which nobody is present.
	k.Payments, _ = Settle(accounts)
	return k
}

func daysOf(t *trip.Trip, m *trip.Member) int {
	days := 0
	for day := 1; day <= len(t.Days); day++ {
		if m.Present(day) {
			days++
		}
	}
	return days
}

// mostExact bounds the members for whom the least number of payments is
// searched; beyond, it is at most one less than the members who settle.
const mostExact = 16

// Settle finds payments after which everybody has paid their share, as few as
// can be for up to sixteen members who are not already even. It refuses
// accounts whose payments and shares do not add up to the same.
//
// Members who settle among themselves need one payment less than they are, so
// the most groups that are even within give the fewest payments: a search over
// subsets (zero-sum partition, from memory).
func Settle(accounts []Account) ([]Payment, error) {
	var open []Account
	var total units.Money
	for _, a := range accounts {
		total += a.Paid - a.Share
		if a.Paid != a.Share {
			open = append(open, a)
		}
	}
	if total != 0 {
		return nil, prose.Errorf("paid and shared differ by %d in the smallest unit of money: check who paid what", total)
	}
	slices.SortFunc(open, func(a, b Account) int { return cmp.Compare(a.Member, b.Member) })
	var payments []Payment
	for _, group := range evenGroups(open) {
		payments = append(payments, settleGroup(group)...)
	}
	slices.SortFunc(payments, func(a, b Payment) int { return cmp.Or(cmp.Compare(a.From, b.From), cmp.Compare(a.To, b.To)) })
	return payments, nil
}

// evenGroups splits accounts into the most groups that add up to nothing.
func evenGroups(open []Account) [][]Account {
	n := len(open)
	if n == 0 {
		return nil
	}
	if n > mostExact {
		return [][]Account{open}
	}
	// most[set] is how many even groups can be closed while members of the set
	// are taken one by one; last[set] is the one taken last.
	sum := make([]units.Money, 1<<n)
	most, last := make([]int8, 1<<n), make([]int8, 1<<n)
	for set := 1; set < 1<<n; set++ {
		low := bits.TrailingZeros(uint(set))
		sum[set] = sum[set&(set-1)] + open[low].Paid - open[low].Share
		most[set] = -1
		for i := range n {
			if set>>i&1 == 1 && most[set^1<<i] > most[set] {
				most[set], last[set] = most[set^1<<i], int8(i)
			}
		}
		if sum[set] == 0 {
			most[set]++
		}
	}
	var groups [][]Account
	for set := 1<<n - 1; set != 0; set ^= 1 << last[set] {
		if sum[set] == 0 {
			groups = append(groups, nil)
		}
		groups[len(groups)-1] = append(groups[len(groups)-1], open[last[set]])
	}
	return groups
}

// settleGroup lets the largest debt pay the largest claim until all are even.
func settleGroup(group []Account) []Payment {
	balance := make([]units.Money, len(group))
	for i, a := range group {
		balance[i] = a.Paid - a.Share
	}
	var payments []Payment
	for {
		from, to := 0, 0
		for i := range balance {
			if balance[i] < balance[from] || balance[i] == balance[from] && group[i].Member < group[from].Member {
				from = i
			}
			if balance[i] > balance[to] || balance[i] == balance[to] && group[i].Member < group[to].Member {
				to = i
			}
		}
		amount := min(-balance[from], balance[to])
		if amount <= 0 {
			return payments
		}
		balance[from] += amount
		balance[to] -= amount
		payments = append(payments, Payment{group[from].Member, group[to].Member, amount})
	}
}
