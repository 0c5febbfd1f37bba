package main

import (
	"io"

	"github.com/spf13/cobra"

	"sumpter/exporter/tripjson"
)

func schemaCommand(c console) *cobra.Command {
	command := &cobra.Command{
		Use:   "schema",
		Short: "Print the JSON Schema of trip JSON",
		Long:  withExits("Print the JSON Schema of trip JSON, or with --plan that of plan --json."),
		Args:  noMore,
	}
	ofPlan := command.Flags().Bool("plan", false, "the schema of the plan instead of the trip")
	command.RunE = func(*cobra.Command, []string) error { return runSchema(c.out, *ofPlan) }
	return command
}

// runSchema prints a JSON Schema.
func runSchema(out io.Writer, ofPlan bool) error {
	schema := tripjson.Schema
	if ofPlan {
		schema = tripjson.PlanSchema
	}
	text, err := schema()
	if err != nil {
		return err
	}
	_, err = out.Write(text)
	return err
}
