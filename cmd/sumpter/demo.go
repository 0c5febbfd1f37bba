package main

import (
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"sumpter/app/demo"
)

func demoCommand(c console) *cobra.Command {
	command := &cobra.Command{
		Use:   "demo OUT.trip",
		Short: "Write a complete invented trip to look at and change",
		Long: withExits("Write the demo trip: an invented club, eleven people, nine days on foot, two\n" +
			"resupply points. Names, prices and labels in it are invented: do not buy by it."),
		Args: exactly("a file name for the demo trip"),
	}
	force := forceFlag(command)
	command.RunE = func(_ *cobra.Command, args []string) error {
		return runDemo(c.out, args[0], *force)
	}
	return command
}

// runDemo writes the demo trip to a new trip file.
func runDemo(out io.Writer, path string, force bool) error {
	t := demo.Trip()
	if err := saveTrip(path, &t, force); err != nil {
		return err
	}
	fmt.Fprintf(out, "%s holds the trip %q: %s, %s. Everything in it is invented.\n", path, t.Title, counted(len(t.Crew), "person", "people"), counted(len(t.Days), "day", "days"))
	fmt.Fprintf(out, "Next: sumpter plan %s\n", path)
	return nil
}
