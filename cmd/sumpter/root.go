package main

import (
	"context"
	"fmt"
	"io"

	"github.com/spf13/cobra"
)

// console is where the command speaks.
type console struct {
	out  io.Writer
	err  io.Writer
	live bool // somebody watches err: show progress
}

const rootHelp = `Sumpter feeds a group on a multi-day trip on foot.

A trip file holds what you enter: crew, route, foods, recipes, menu, gear,
resupply points. From it Sumpter works out needs, portions, spoilage, fuel and
water, bags and labels, boxes to send ahead, a fair split of the load, and a
shopping list of whole packages.

First steps:
  sumpter demo club.trip            a complete invented trip to look at
  sumpter plan club.trip            the plan in short
  sumpter export club.trip papers   everything to print, in one folder

The plan does not replace local rules, the labels on packages, or a doctor's
word. Unknown is never safe: findings say what the program does not know.`

// newRoot joins all commands.
func newRoot(c console) *cobra.Command {
	root := &cobra.Command{
		Use:           "sumpter",
		Short:         "Plan the food of a group on a multi-day trip on foot",
		Long:          rootHelp + "\n\n" + exitHelp(),
		Args:          noMore,
		SilenceErrors: true,
		SilenceUsage:  true,
		RunE:          func(command *cobra.Command, _ []string) error { return runWindow(command, "") },
	}
	root.SetOut(c.out)
	root.SetErr(c.err)
	root.SetFlagErrorFunc(func(command *cobra.Command, err error) error {
		return usageFault("%v; see %s --help", err, command.CommandPath())
	})
	root.CompletionOptions.DisableDefaultCmd = true
	root.AddCommand(windowCommand(), demoCommand(c), importCommand(c), planCommand(c), exportCommand(c), checkCommand(c), templateCommand(c), schemaCommand(c))
	return root
}

// run runs one call of the command and gives its exit code.
func run(ctx context.Context, args []string, c console) int {
	root := newRoot(c)
	root.SetArgs(args)
	err := root.ExecuteContext(ctx)
	if err != nil && ctx.Err() != nil {
		err = ctx.Err()
	}
	return int(report(c.err, err))
}

// noMore refuses words after a command that takes none.
func noMore(command *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	if command.HasParent() {
		return usageFault("%s takes no %q; see %s --help", command.CommandPath(), args[0], command.CommandPath())
	}
	return usageFault("there is no command %q; see %s --help", args[0], command.CommandPath())
}

// exactly wants the named arguments.
func exactly(names ...string) cobra.PositionalArgs {
	return func(command *cobra.Command, args []string) error {
		switch {
		case len(args) < len(names):
			return usageFault("%s needs %s; see %s --help", command.CommandPath(), names[len(args)], command.CommandPath())
		case len(args) > len(names):
			return usageFault("%s does not know what to do with %q; see %s --help", command.CommandPath(), args[len(names)], command.CommandPath())
		}
		return nil
	}
}

// withExits adds the exit table to a command's help.
func withExits(text string) string { return fmt.Sprintf("%s\n\n%s", text, exitHelp()) }

func forceFlag(command *cobra.Command) *bool {
	return command.Flags().Bool("force", false, "replace files that are already there")
}
