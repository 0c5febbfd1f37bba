//go:build cgo

package main

import "github.com/spf13/cobra"

// runWindow stands in until the window is part of the program.
func runWindow(command *cobra.Command) error {
	command.Println("The window is not built in yet; these commands work without it.")
	command.Println()
	return command.Help()
}
