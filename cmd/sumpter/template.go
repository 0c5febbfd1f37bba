package main

import (
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"sumpter/domain/units"
	"sumpter/exporter/tripbook"
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
	inUS := command.Flags().Bool("us", false, "headings in pounds, feet and Fahrenheit instead of metric units")
	command.RunE = func(_ *cobra.Command, args []string) error {
		return runTemplate(c.out, args[0], *inUS, *force)
	}
	return command
}

// runTemplate writes the empty trip workbook.
func runTemplate(out io.Writer, path string, inUS, force bool) error {
	system := units.Metric
	if inUS {
		system = units.US
	}
	err := produceFrom(path, force, func(w io.Writer) error { return tripbook.WriteTemplate(w, system) })
	if err != nil {
		return err
	}
	fmt.Fprintf(out, "%s is ready to fill in. Then: sumpter import %s OUT.trip\n", path, path)
	return nil
}
