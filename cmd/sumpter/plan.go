package main

import (
	"context"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"sumpter/domain/plan"
	"sumpter/domain/prose"
	"sumpter/exporter/summary"
	"sumpter/exporter/tables"
	"sumpter/exporter/tripjson"
)

// mostShown is how many findings the short plan prints.
const mostShown = 10

func planCommand(c console) *cobra.Command {
	command := &cobra.Command{
		Use:   "plan TRIP",
		Short: "Plan a trip and show the figures that matter",
		Long: withExits("Plan a trip and show who needs what, the food, the heaviest share and how far it\n" +
			"is from the best possible, fuel, water, cost, boxes with their dates, and what to\n" +
			"look at first. With --json the whole plan goes to standard output for programs."),
		Args: exactly("a trip file"),
	}
	asJSON := command.Flags().Bool("json", false, "write the whole plan as JSON")
	command.RunE = func(command *cobra.Command, args []string) error {
		return runPlan(command.Context(), c, args[0], *asJSON)
	}
	return command
}

// runPlan plans a trip file and shows the plan.
func runPlan(ctx context.Context, c console, path string, asJSON bool) error {
	p, err := planFile(ctx, c, path)
	if err != nil {
		return err
	}
	if asJSON {
		return tripjson.WritePlan(c.out, p)
	}
	return showPlan(c.out, p)
}

// planFile reads and plans a trip. A trip that cannot be planned is a fault
// of the input.
func planFile(ctx context.Context, c console, path string) (*plan.Plan, error) {
	t, err := readTrip(ctx, path)
	if err != nil {
		return nil, err
	}
	watch := progress{c.err, c.live}
	defer watch.done()
	p, err := plan.Make(ctx, t, plan.Options{Progress: func(stage prose.Text) { watch.say(stage.String()) }})
	if err != nil {
		return nil, err
	}
	if p.Refused() {
		var lines []string
		for _, finding := range p.Findings {
			lines = append(lines, finding.What.String())
		}
		return nil, inputFault(path, lines...)
	}
	return p, nil
}

// showPlan writes the plan in short for a person.
func showPlan(w io.Writer, p *plan.Plan) error {
	out := &lineWriter{w: w}
	out.line("%s", p.Trip.Title)
	out.line("%s", summary.When(p))
	out.line("")
	for _, line := range summary.Lines(p) {
		out.item(line)
	}
	showMembers(out, p)
	showFindings(out, p, mostShown)
	return out.err
}

// showMembers lists who needs what.
func showMembers(out *lineWriter, p *plan.Plan) {
	needs := tables.From(p).Needs
	at := needs.Column
	out.line("")
	out.line("Who needs what, kcal a day")
	out.line("  %-24s %5s %7s %11s %8s %12s", "member", "days", "need", "from packs", "planned", "leanest day")
	for _, row := range needs.Rows {
		lowest := row[at("lowest")].Text
		if lowest == "" {
			lowest = fmt.Sprintf("%.0f %%", row[at("lowest")].Number*100)
		}
		out.line("  %-24s %5s %7s %11s %8s %12s", cut(row[at("member")].Text, 24),
			whole(row[at("days")]), whole(row[at("need")]), whole(row[at("target")]), whole(row[at("planned")]), lowest)
	}
}

func whole(value tables.Value) string {
	if value.Kind != tables.Figure {
		return value.Text
	}
	return fmt.Sprintf("%.0f", value.Number)
}

// showFindings lists the worst findings, at most so many.
func showFindings(out *lineWriter, p *plan.Plan, most int) {
	list := tables.From(p).Findings
	at := list.Column
	out.line("")
	if len(list.Rows) == 0 {
		out.line("%s", list.Empty)
		return
	}
	out.line("What to look at first")
	for i, row := range list.Rows {
		if i == most {
			out.line("  … and %d more: see sumpter check, or the sheet Findings of the workbook", len(list.Rows)-most)
			break
		}
		showFinding(out, row, at)
	}
}

func showFinding(out *lineWriter, row []tables.Value, at func(string) int) {
	out.line("  %s · %s", row[at("severity")].Text, row[at("where")].Text)
	out.line("      %s", oneLine(row[at("what")].Text))
	if remedy := row[at("remedy")].Text; remedy != "" {
		out.line("      → %s", oneLine(remedy))
	}
}

// serious counts the findings that must be fixed.
func serious(p *plan.Plan) int { return p.Summary().MustFix }
