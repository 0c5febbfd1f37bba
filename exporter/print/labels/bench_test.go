package labels

import (
	"bytes"
	"context"
	"testing"

	"sumpter/domain/bags"
	"sumpter/domain/plan"
	"sumpter/domain/prose"
	"sumpter/domain/trip/triptest"
	"sumpter/exporter/print/fonts"
	"sumpter/exporter/print/pdf"
	"sumpter/exporter/print/press"
)

// BenchmarkLabels3000 draws and writes the labels of 3,000 bags.
func BenchmarkLabels3000(b *testing.B) {
	t := triptest.Large(60, 21, 1)
	p, err := plan.Make(context.Background(), t, plan.Options{})
	if err != nil {
		b.Fatal(err)
	}
	var list []*bags.Bag
	for len(list) < 3000 {
		for i := range p.Bags.Bags {
			list = append(list, &p.Bags.Bags[i])
		}
	}
	b.ReportAllocs()
	for b.Loop() {
		printer := press.New(p, fonts.Bundled(), prose.Reader{}, press.A4, press.Colour)
		pages, err := Draw(context.Background(), printer, Usual(press.A4).Grid, list[:3000], 1, nil)
		if err != nil {
			b.Fatal(err)
		}
		var out bytes.Buffer
		if err := pdf.Write(context.Background(), &out, pdf.About{Title: "labels"}, pages); err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(float64(out.Len()), "bytes")
	}
}
