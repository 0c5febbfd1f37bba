package main

import (
	"context"
	"errors"
	"io"

	"sumpter/app/demo"
	"sumpter/domain/plan"
	"sumpter/domain/trip"
	"sumpter/exporter/tripjson"
)

var errNotYet = errors.New("this part is not built in yet")

func demoTrip() *trip.Trip {
	t := demo.Trip()
	return &t
}

func importTrip(context.Context, string) (*trip.Trip, error) { return nil, errNotYet }

func writePlanJSON(w io.Writer, p *plan.Plan) error { return tripjson.WritePlan(w, p) }

var (
	tripSchema = tripjson.Schema
	planSchema = tripjson.PlanSchema
)
