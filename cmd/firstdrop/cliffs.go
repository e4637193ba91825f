package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"firstdrop/measure"
	"firstdrop/order"
)

func (p *program) cliffsCommand() *cobra.Command {
	var units unitsFlag
	var asJSON bool
	c := p.command(cobra.Command{
		Use:   "cliffs JOB",
		Short: "Tell which millimetres the number of rolls hangs on",
		Long: `Cliffs finds the smallest change of the walls' height, of an allowance, of the
repeat or of the rolls' length at which the job takes a roll more or less, to
the millimetre, nearest first. The drops stay where they are.`,
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
	c.Flags().BoolVar(&asJSON, "json", false, "print the cliffs as JSON, lengths in millimetres")
	return units.addTo(c, "metric or imperial (the job's, if not given)")
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

	of order.Quantity
}

func cliffDocuments(cs []order.Cliff) []cliff {
	out := []cliff{}
	for _, c := range cs {
		out = append(out, cliff{c.Quantity.String(), c.Change, c.Rolls, c.NoFit, c.Missing, c.Proven, c.Quantity})
	}
	return out
}

func (p *program) printCliffs(pl *planned, told []batchCliffs) error {
	for _, t := range told {
		if _, err := fmt.Fprintf(p.out, "%s: %s\n", printable(t.title()), t.planned(t.Rolls)); err != nil {
			return written(err)
		}
		for _, c := range t.Cliffs {
			if _, err := fmt.Fprintln(p.out, "  "+pl.cliffLine(c, t.Rolls)); err != nil {
				return written(err)
			}
		}
		if len(t.Cliffs) == 0 {
			if _, err := fmt.Fprintln(p.out, "  Nothing within reach changes that."); err != nil {
				return written(err)
			}
		}
	}
	return nil
}

// cliffWords say what more and less of a quantity is.
var cliffWords = map[order.Quantity][2]string{
	order.WallHeight:    {"lower walls", "higher walls"},
	order.HeadAllowance: {"less allowance at the head", "more allowance at the head"},
	order.FootAllowance: {"less allowance at the foot", "more allowance at the foot"},
	order.Repeat:        {"shorter repeat", "longer repeat"},
	order.RollLength:    {"shorter rolls", "longer rolls"},
}

// cliffLine writes one cliff: "8 mm lower walls: 8 rolls, 1 saved".
func (pl *planned) cliffLine(c cliff, planned int) string {
	way := 0
	if c.Change > 0 {
		way = 1
	}
	text := fmt.Sprintf("%s %s: ", pad(c.Change.Abs().Format(pl.units), 8), cliffWords[c.of][way])
	switch {
	case c.NoFit:
		return text + "a piece fits no roll"
	case c.Missing > 0:
		return text + fmt.Sprintf("%s have no paper", count(c.Missing, "cut"))
	case c.Rolls < planned:
		text += fmt.Sprintf("%s, %d saved", count(c.Rolls, "roll"), planned-c.Rolls)
	default:
		text += fmt.Sprintf("%s, %d more", count(c.Rolls, "roll"), c.Rolls-planned)
	}
	if !c.Proven {
		text += " (not proven)"
	}
	return text
}
