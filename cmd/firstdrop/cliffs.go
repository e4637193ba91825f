package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"firstdrop/measure"
	"firstdrop/order"
	"firstdrop/tell"
)

func (p *program) cliffsCommand() *cobra.Command {
	var units unitsFlag
	var asJSON bool
	c := p.command(cobra.Command{
		Use: "cliffs JOB",
		Example: `  firstdrop cliffs room.yaml
  firstdrop cliffs room.yaml --json`,
		Args:              oneJob,
		ValidArgsFunction: completeJob,
	}, func(c *cobra.Command, args []string) error {
		pl, err := p.plan(c.Context(), args[0], units)
		if err != nil {
			return err
		}
		told, err := eachBatch(c.Context(), pl, func(i, batch int) (batchCliffs, error) {
			cliffs, err := pl.plan.Cliffs(i, batch)
			return batchCliffs{pl.batchName(i, batch), pl.toBuy(i, batch), cliffDocuments(cliffs)}, err
		})
		if err != nil {
			return err
		}
		if asJSON {
			return written(writeJSON(p.out, told))
		}
		return p.printCliffs(pl, told)
	})
	c.Flags().BoolVar(&asJSON, "json", false, "")
	return units.addTo(c)
}

// batchCliffs is what the count of one batch of a paper hangs on.
type batchCliffs struct {
	batchName
	Rolls  int     `json:"rolls"`
	Cliffs []cliff `json:"cliffs"`
}

// cliff is one of them, for programs.
type cliff struct {
	Quantity string         `json:"quantity"`
	Change   measure.Length `json:"change"`
	Rolls    int            `json:"rolls"`            // to buy
	NoFit    bool           `json:"no_fit,omitempty"` // a piece then fits no roll; rolls is 0
	Missing  int            `json:"missing,omitempty"`
	Proven   bool           `json:"proven"`

	of order.Cliff
}

func cliffDocuments(cs []order.Cliff) []cliff {
	out := []cliff{}
	for _, c := range cs {
		out = append(out, cliff{c.Quantity.String(), c.Change, c.Rolls, c.NoFit, c.Missing, c.Proven, c})
	}
	return out
}

func (p *program) printCliffs(pl *planned, told []batchCliffs) error {
	for _, t := range told {
		if _, err := fmt.Fprintln(p.out, pl.text("page.of", "title", printable(t.title(pl.lang)), "name", tell.Planned(pl.lang, t.InHand, t.Rolls))); err != nil {
			return written(err)
		}
		for _, c := range t.Cliffs {
			if _, err := fmt.Fprintln(p.out, "  "+pl.cliffLine(c, t.Rolls)); err != nil {
				return written(err)
			}
		}
		if len(t.Cliffs) == 0 {
			if _, err := fmt.Fprintln(p.out, "  "+pl.text("cliff.none")); err != nil {
				return written(err)
			}
		}
	}
	return nil
}

// cliffLine writes one cliff: "8 mm     lower walls: 8 rolls, 1 saved".
func (pl *planned) cliffLine(c cliff, planned int) string {
	change, effect := tell.Cliff(pl.lang, c.of, planned)
	return pad(pl.lang.Length(c.Change.Abs()), 8) + " " + pl.text("page.of", "title", change, "name", effect)
}
