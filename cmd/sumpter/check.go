package main

import (
	"context"

	"github.com/spf13/cobra"

	"sumpter/exporter/tables"
)

func checkCommand(c console) *cobra.Command {
	command := &cobra.Command{
		Use:   "check TRIP",
		Short: "Plan a trip and list every finding; the exit status tells of serious ones",
		Long: withExits("Plan a trip and list every finding, worst first, with its reason and remedy.\n" +
			"The exit status is 4 if any finding must be fixed, so that scripts can tell."),
		Args: exactly("a trip file"),
	}
	command.RunE = func(command *cobra.Command, args []string) error {
		return runCheck(command.Context(), c, args[0])
	}
	return command
}

// runCheck plans a trip file and lists what was found.
func runCheck(ctx context.Context, c console, path string) error {
	p, err := planFile(ctx, c, path)
	if err != nil {
		return err
	}
	out := &lineWriter{w: c.out}
	list := tables.From(p).Findings
	at := list.Column
	for _, row := range list.Rows {
		showFinding(out, row, at)
		out.line("      because: %s", oneLine(row[at("why")].Text))
	}
	if len(list.Rows) == 0 {
		out.line("%s", list.Empty)
	}
	if out.err != nil {
		return out.err
	}
	if n := serious(p); n > 0 {
		return &fault{code: seriousFindings, lines: []string{counted(n, "finding", "findings") + " must be fixed"}}
	}
	return nil
}
