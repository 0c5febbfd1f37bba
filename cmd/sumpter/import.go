package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"sumpter/app/importer"
)

func importCommand(c console) *cobra.Command {
	command := &cobra.Command{
		Use:   "import IN OUT.trip",
		Short: "Make a trip file from a trip workbook or trip JSON",
		Long: withExits("Make a trip file from a filled trip workbook (.xlsx, see sumpter template) or\n" +
			"trip JSON (see sumpter schema). It is all or nothing: if anything in the input\n" +
			"is wrong, each fault is one line that says where, and no file is made."),
		Args: exactly("a workbook or JSON file to read", "a file name for the new trip"),
	}
	force := forceFlag(command)
	command.RunE = func(_ *cobra.Command, args []string) error {
		return runImport(c, args[0], args[1], *force)
	}
	return command
}

// runImport reads a whole trip and writes it to a new trip file. What is
// merely worth knowing goes to stderr.
func runImport(c console, in, path string, force bool) error {
	if err := refuseExisting(force, path); err != nil {
		return err
	}
	t, problems, err := importer.ReadFile(in)
	if err != nil {
		return &fault{code: badInput, lines: []string{oneLine(err.Error())}, cause: err}
	}
	texts := make([]string, len(problems))
	for i, problem := range problems {
		texts[i] = problem.String()
	}
	if t == nil {
		return inputFault(in, texts...)
	}
	for _, text := range texts {
		fmt.Fprintf(c.err, "sumpter: note: %s: %s\n", in, oneLine(text))
	}
	if err := saveTrip(path, t, force); err != nil {
		return err
	}
	fmt.Fprintf(c.out, "%s holds the trip %q: %s, %s, %s, %s.\n", path, t.Title, counted(len(t.Crew), "person", "people"), counted(len(t.Days), "day", "days"), counted(len(t.Foods), "food", "foods"), counted(len(t.Recipes), "recipe", "recipes"))
	fmt.Fprintf(c.out, "Next: sumpter plan %s\n", path)
	return nil
}
