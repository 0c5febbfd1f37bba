package tables

import "sumpter/domain/shopping"

// partsTable lists everybody's part of the cost and what they paid.
func partsTable(x *index, k shopping.Reckoning) Table {
	money := func(key, heading string, of func(shopping.MemberMoney) Value) field[shopping.MemberMoney] {
		return field[shopping.MemberMoney]{Column{Key: key, Heading: heading + " (" + x.trip.Currency + ")", Decimals: x.moneyDecimals(), Width: 13}, of}
	}
	return fill(Table{
		Name: "parts", Title: "Everybody's part of the cost",
		About: "By days present. To pay: their part of what members paid so far, less what they paid themselves; below zero they get money back.",
		Empty: "Nobody is in the crew.",
	}, []field[shopping.MemberMoney]{
		{Column{Key: "member", Heading: "Member", Width: 22, Wrap: true}, func(m shopping.MemberMoney) Value { return words(x.member(m.Member)) }},
		{Column{Key: "days", Heading: "Days", Width: 6}, func(m shopping.MemberMoney) Value { return count(m.Days) }},
		money("part", "Part of the cost", func(m shopping.MemberMoney) Value { return x.money(m.Part) }),
		money("paid", "Paid so far", func(m shopping.MemberMoney) Value { return x.money(m.Paid) }),
		money("to_pay", "To pay", func(m shopping.MemberMoney) Value { return x.money(m.Owed - m.Paid) }),
	}, k.Members)
}

// paymentsTable lists who pays whom.
func paymentsTable(x *index, k shopping.Reckoning) Table {
	return fill(Table{
		Name: "who_pays_whom", Title: "Who pays whom",
		About: "The fewest payments after which everybody has paid their part of what members paid so far.",
		Empty: "Nothing is to be settled.",
	}, []field[shopping.Payment]{
		{Column{Key: "done", Heading: "Done", Role: Tick, Width: 6}, func(shopping.Payment) Value { return open() }},
		{Column{Key: "from", Heading: "From", Width: 22, Wrap: true}, func(p shopping.Payment) Value { return words(x.member(p.From)) }},
		{Column{Key: "to", Heading: "To", Width: 22, Wrap: true}, func(p shopping.Payment) Value { return words(x.member(p.To)) }},
		{Column{Key: "amount", Heading: "Amount (" + x.trip.Currency + ")", Decimals: x.moneyDecimals(), Width: 13}, func(p shopping.Payment) Value { return x.money(p.Amount) }},
	}, k.Payments)
}
