package sheet

import (
	"fmt"
	"maps"
	"strings"

	"firstdrop/finding"
	"firstdrop/measure"
	"firstdrop/plan"
)

// Words says a finding in one plain sentence that a client understands, with
// its place and its sizes. A code that it does not know is named together with
// everything that the finding holds.
func Words(f finding.Finding, sys measure.System) string {
	s := speaker{f, sys}
	say, ok := sentences[f.Code]
	if !ok {
		return s.bare()
	}
	text := say(s)
	if f.Place.Run != "" {
		text += " (" + f.Place.Run + ")"
	}
	return text + "."
}

// HasWords reports whether there is a sentence for a code.
func HasWords(c finding.Code) bool { return sentences[c] != nil }

// sentences has a sentence for every code, without its full stop.
var sentences = merged(planSentences, ruleSentences, paperSentences, roomSentences)

func merged(all ...map[finding.Code]func(speaker) string) map[finding.Code]func(speaker) string {
	out := map[finding.Code]func(speaker) string{}
	for _, m := range all {
		maps.Copy(out, m)
	}
	return out
}

// planSentences speak of the layout and of the rolls.
var planSentences = map[finding.Code]func(speaker) string{
	plan.Sliver: func(s speaker) string {
		return s.subject("A strip") + " is only " + s.size("width") + " wide: so narrow a strip is hard to keep straight, and shows"
	},
	plan.SeamNearEdge: func(s speaker) string {
		return "A seam " + s.where() + " stands " + s.size("distance") + " from the edge of " + s.f.Place.Opening + ", where it catches the eye and lifts easily"
	},
	plan.SeamNearFold: func(s speaker) string {
		if s.f.Place.Corner != "" {
			return "A seam stands on the outside corner " + s.f.Place.Corner + ", where it is easily knocked open"
		}
		return "A seam " + s.where() + " stands " + s.size("distance") + " from an outside corner, where it is easily knocked open"
	},
	plan.FocalSeam: func(s speaker) string {
		return "A seam runs down the middle of wall " + s.f.Place.Wall + s.atX() + ", which is looked at first"
	},
	plan.EndInFold: func(s speaker) string {
		return "A drop ends exactly in corner " + s.f.Place.Corner + " with nothing left to turn it: measure that wall again before cutting, since a few millimetres decide"
	},
	plan.KillMisfit: func(s speaker) string {
		return "The design cannot meet all the way round: at the kill seam " + s.where() + ", " + s.size("height") + " high, it misses by " +
			s.size("across") + " across and " + s.size("along") + " along"
	},
	plan.KillMeets: func(s speaker) string {
		return "The walls come out as a whole number of design widths: the design meets all the way round, also at the last seam " + s.where()
	},
	plan.Wedge: func(s speaker) string {
		return "Corner " + s.f.Place.Corner + " leans, so the design misses unevenly there: by " + s.size("least") + " where least and " + s.size("most") + " where most"
	},
	plan.CornerLoss: func(s speaker) string {
		text := "In corner " + s.f.Place.Corner + " the design loses " + s.size("across") + " of its width"
		if s.signed("across") < 0 {
			text = "In corner " + s.f.Place.Corner + " the design shows " + s.size("across") + " of its width twice"
		}
		if s.signed("along") != 0 {
			text += " and misses by " + s.size("along") + " in height"
		}
		return text
	},
	plan.MotifCut: func(s speaker) string {
		return s.subject("The paper") + ": the ceiling line" + s.atY() + " cuts through the leading motif"
	},
	plan.ReturnByHand: func(s speaker) string {
		return "The returns of " + s.f.Place.Opening + " on wall " + s.f.Place.Wall + " (" + s.size("depth") +
			" deep) are not in the cutting list: cut strips for them by hand"
	},
	plan.FullLength: func(s speaker) string {
		text := s.paper() + ": the number of rolls holds only if each is the full " + s.size("label") + " of its label; a roll may be as short as " + s.size("shortest")
		if s.f.Count == 0 {
			return text + ", and then one piece is longer than a roll: measure the rolls before cutting"
		}
		return text + ", and then " + count(s.f.Count, "roll is", "rolls are") + " needed"
	},
	plan.Unproven: func(s speaker) string {
		return s.paper() + ": the rolls are enough, but it is not ruled out that up to " + count(s.f.Count, "roll", "rolls") + " fewer would do"
	},
	plan.PaperMissing: func(s speaker) string {
		return s.paper() + ": there is no paper for " + count(s.f.Count, "piece", "pieces") + " of this job, and no more to be had. Do not cut before you know where it comes from"
	},
	plan.SideBySide: func(s speaker) string {
		return s.paper() + ": narrow pieces cut side by side from one length save " + count(s.f.Count, "roll", "rolls") + "; the cutting list says which"
	},
	plan.BatchChange: func(s speaker) string {
		next := "another batch"
		if s.f.Word != "" {
			next = "batch " + s.f.Word
		}
		return "In corner " + s.f.Place.Corner + " the wall on the right begins with " + next + ": colours may differ a little, so hang no drop of one batch on the other's wall"
	},
	plan.AreaMisleads: func(s speaker) string {
		return s.paper() + ": dividing areas says " + count(s.f.Count, "roll", "rolls") + "; that is not the true number, since paper is hung in whole drops"
	},
}

// speaker says parts of a sentence about a finding.
type speaker struct {
	f   finding.Finding
	sys measure.System
}

// size returns a size of that name without its sign; "an unknown length" when
// the finding has none.
func (s speaker) size(name string) string {
	if _, ok := s.f.Size(name); !ok {
		return "an unknown length"
	}
	return s.signed(name).Abs().Format(s.sys)
}

func (s speaker) signed(name string) measure.Length {
	l, _ := s.f.Size(name)
	return l
}

// paper names the finding's paper, as the subject of a sentence.
func (s speaker) paper() string { return "Paper " + s.f.Place.Paper }

// subject names the finding's drop and wall; other stands in when there is no drop.
func (s speaker) subject(other string) string {
	if s.f.Place.Drop > 0 {
		other = fmt.Sprintf("Drop %d", s.f.Place.Drop)
	}
	if s.f.Place.Wall != "" {
		other += " on wall " + s.f.Place.Wall
	}
	return other
}

// where names the finding's place in a sentence: "on wall A, 1237 mm from its
// left end", "in corner A|B".
func (s speaker) where() string {
	p := s.f.Place
	switch {
	case p.Corner != "":
		return "in corner " + p.Corner
	case p.Opening != "" && s.f.Code == plan.KillMisfit || p.Opening != "" && s.f.Code == plan.KillMeets:
		return "over " + p.Opening + " on wall " + p.Wall
	case p.X != nil:
		return "on wall " + p.Wall + ", " + p.X.Format(s.sys) + " from its left end,"
	}
	return "on wall " + p.Wall
}

func (s speaker) atX() string {
	if s.f.Place.X == nil {
		return ""
	}
	return ", " + s.f.Place.X.Format(s.sys) + " from its left end"
}

func (s speaker) atY() string {
	if s.f.Place.Y == nil {
		return ""
	}
	return " at " + s.f.Place.Y.Format(s.sys) + " above the datum"
}

// bare names everything that a finding holds.
func (s speaker) bare() string {
	p := s.f.Place
	var parts []string
	for _, part := range []struct{ name, value string }{
		{"run", p.Run}, {"wall", p.Wall}, {"corner", p.Corner}, {"opening", p.Opening}, {"paper", p.Paper}, {"word", s.f.Word},
	} {
		if part.value != "" {
			parts = append(parts, part.name+" "+part.value)
		}
	}
	if p.Drop > 0 {
		parts = append(parts, fmt.Sprintf("drop %d", p.Drop))
	}
	if p.X != nil {
		parts = append(parts, p.X.Format(s.sys)+" from the wall's left end")
	}
	if p.Y != nil {
		parts = append(parts, p.Y.Format(s.sys)+" above the datum")
	}
	for _, z := range s.f.Sizes {
		parts = append(parts, strings.ReplaceAll(z.Name, "_", " ")+" "+z.Value.Format(s.sys))
	}
	if s.f.Count != 0 {
		parts = append(parts, fmt.Sprint(s.f.Count))
	}
	text := strings.NewReplacer("_", " ", "-", " ").Replace(string(s.f.Code))
	if text != "" {
		text = strings.ToUpper(text[:1]) + text[1:]
	}
	if len(parts) > 0 {
		text += ": " + strings.Join(parts, ", ")
	}
	return text + "."
}

// count writes a number of things.
func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
