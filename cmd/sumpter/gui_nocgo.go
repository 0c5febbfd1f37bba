//go:build !cgo

package main

import "github.com/spf13/cobra"

// runWindow tells that a build without cgo cannot open a window.
func runWindow(command *cobra.Command, _ string) error {
	command.Println("This build has no window: it was made without cgo. These commands work all the same.")
	command.Println()
	return command.Root().Help()
}
