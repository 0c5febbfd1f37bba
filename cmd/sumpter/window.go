package main

import "github.com/spf13/cobra"

// windowCommand opens the window on a trip. Without a sub-command the window
// opens too, on its welcome.
func windowCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "window TRIP",
		Short: "Open the window on a trip file",
		Long:  withExits("Open the window on a trip file. Without any sub-command the window opens on its\nwelcome, which offers the demo trip, an empty trip, or an import."),
		Args:  exactly("a trip file"),
		RunE:  func(command *cobra.Command, args []string) error { return runWindow(command, args[0]) },
	}
}
