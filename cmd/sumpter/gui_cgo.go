//go:build cgo

package main

import (
	"os"
	"runtime"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"
	"github.com/spf13/cobra"

	"sumpter/app/backups"
	"sumpter/app/document"
	"sumpter/app/window"
)

// programID is under which the system keeps the window's few settings.
const programID = "org.sumpter.Sumpter"

// runWindow opens the window, on a trip file if one is named.
func runWindow(command *cobra.Command, path string) error {
	if !displayThere() {
		command.Println("There is no display to open a window on. These commands work without one.")
		command.Println()
		return command.Root().Help()
	}
	program := app.NewWithID(programID)
	bench := window.New(program, document.Threads{Post: fyne.Do}, backups.Usual())
	if path != "" {
		program.Lifecycle().SetOnStarted(func() { bench.OpenPath(path) })
	}
	bench.Window().ShowAndRun()
	return nil
}

// displayThere tells whether a window can be shown at all; only on the systems
// that say so by the environment can that be known beforehand.
func displayThere() bool {
	if runtime.GOOS != "linux" && runtime.GOOS != "freebsd" {
		return true
	}
	return os.Getenv("DISPLAY") != "" || os.Getenv("WAYLAND_DISPLAY") != ""
}
