package shopping_test

import (
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/shopping"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

func TestSharesAddUpToTheCent(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		tr := triptest.Trip().Draw(rt, "trip").Canonical()
		total := units.Money(rapid.Int64Range(0, 1_000_000).Draw(rt, "total"))
		var sum, days units.Money
		list := shopping.Shares(tr, total)
		present := make([]units.Money, len(list))
		for i, a := range list {
			sum += a.Share
			for day := range tr.Days {
				if tr.Crew[i].Present(day + 1) {
					present[i]++
				}
			}
			days += present[i]
		}
		if days == 0 {
			return
		}
		if sum != total {
			rt.Fatalf("shares of %d add up to %d", total, sum)
		}
		for i, a := range list {
			if exact := total * present[i] / days; a.Share < exact || a.Share > exact+1 {
				rt.Fatalf("%d of %d days pay %d of %d", present[i], days, a.Share, total)
			}
		}
	})
}

// fewest tries all ways to settle: somebody who owes pays somebody who is owed
// either all they owe or all that is owed.
func fewest(balance []int) int {
	at := -1
	for i, b := range balance {
		if b != 0 {
			at = i
			break
		}
	}
	if at < 0 {
		return 0
	}
	best := len(balance)
	for j := at + 1; j < len(balance); j++ {
		if balance[at] > 0 == (balance[j] > 0) || balance[j] == 0 {
			continue
		}
		next := append([]int(nil), balance...)
		next[j] += next[at]
		next[at] = 0
		best = min(best, 1+fewest(next))
	}
	return best
}

func TestFewestPayments(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		balance := rapid.SliceOfN(rapid.IntRange(-6, 6), 1, 6).Draw(rt, "balance")
		rest := 0
		var accounts []shopping.Account
		for i, b := range balance {
			rest += b
			accounts = append(accounts, shopping.Account{Member: trip.MemberID(i + 1), Paid: units.Money(20 + b), Share: 20})
		}
		balance = append(balance, -rest)
		accounts = append(accounts, shopping.Account{Member: 9, Paid: units.Money(50 - rest), Share: 50})
		payments, err := shopping.Settle(accounts)
		if err != nil {
			rt.Fatal(err)
		}
		owed := map[trip.MemberID]units.Money{}
		for _, a := range accounts {
			owed[a.Member] = a.Paid - a.Share
		}
		for _, p := range payments {
			if p.Amount <= 0 || p.From == p.To {
				rt.Fatalf("payment %+v", p)
			}
			owed[p.From] += p.Amount
			owed[p.To] -= p.Amount
		}
		for member, rest := range owed {
			if rest != 0 {
				rt.Fatalf("member %d is left with %d after %+v", member, rest, payments)
			}
		}
		if want := fewest(balance); len(payments) != want {
			rt.Fatalf("%d payments settle %v, %d would do", len(payments), balance, want)
		}
	})
}

func TestTwoPairsSettleApart(t *testing.T) {
	got, err := shopping.Settle([]shopping.Account{
		{Member: 1, Paid: 300, Share: 100}, {Member: 2, Paid: 0, Share: 200}, {Member: 3, Paid: 150, Share: 100}, {Member: 4, Paid: 50, Share: 100}, {Member: 5, Paid: 7, Share: 7},
	})
	want := []shopping.Payment{{From: 2, To: 1, Amount: 200}, {From: 4, To: 3, Amount: 50}}
	if err != nil || !reflect.DeepEqual(got, want) {
		t.Errorf("%+v, %v", got, err)
	}
}

func TestAccountsMustAddUp(t *testing.T) {
	if _, err := shopping.Settle([]shopping.Account{{Member: 1, Paid: 5, Share: 4}}); err == nil {
		t.Error("a cent from nowhere is accepted")
	}
}

func TestManyMembersStillSettle(t *testing.T) {
	var accounts []shopping.Account
	for id := range 40 {
		accounts = append(accounts, shopping.Account{Member: trip.MemberID(id + 1), Paid: units.Money(id * 10), Share: 195})
	}
	got, err := shopping.Settle(accounts)
	if err != nil || len(got) > 39 {
		t.Errorf("%d payments, %v", len(got), err)
	}
}
