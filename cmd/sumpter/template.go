package main

import (
	"context"
	"fmt"
	"io"

	"github.com/spf13/cobra"
)

func templateCommand(c console) *cobra.Command {
	command := &cobra.Command{
		Use:   "template OUT.xlsx",
		Short: "Write an empty trip workbook to fill in and import",
		Long: withExits("Write an empty trip workbook: a sheet each for crew, days, foods, recipes, menu,\n" +
			"gear and resupply, with what each column takes. Fill it in with any spreadsheet,\n" +
			"then sumpter import it."),
		Args: exactly("a file name for the workbook"),
	}
	force := forceFlag(command)
	command.RunE = func(command *cobra.Command, args []string) error {
		return runTemplate(command.Context(), c.out, args[0], *force)
	}
	return command
}

// runTemplate writes the empty trip workbook.
func runTemplate(_ context.Context, out io.Writer, path string, force bool) error {
	if err := produceFrom(path, force, writeTemplate); err != nil {
		return err
	}
	fmt.Fprintf(out, "%s is ready to fill in. Then: sumpter import %s OUT.trip\n", path, path)
	return nil
}
