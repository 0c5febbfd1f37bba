package bench

import (
	"sumpter/domain/prose"
	"sumpter/domain/units"
)

// Tell writes a text of the plan for the person at the window.
func Tell(text prose.Text, system units.System) string { return text.In(Reader(system)) }

// Reader is how the person at the window reads.
func Reader(system units.System) prose.Reader { return prose.Reader{Units: system} }
