package plan

import (
	"firstdrop/finding"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/room"
)

// The findings that the kill seam may raise.
const (
	KillMisfit finding.Code = "kill_misfit" // the design misses at the kill seam
	KillMeets  finding.Code = "kill_meets"  // the run closes: the design meets all the way round
)

// kill weighs the kill seam: its length, how far the design misses, and how
// visible the place is. A misfit counts in full from 20 mm on, where anybody
// sees it; what is above eye level counts half.
func (j *judge) kill(l *hanging.Layout, s *hanging.Seam, kill *killPlace) (total int64) {
	if kill.kill.Kind == hanging.AtCorner && l.Rules.Overlap > 0 {
		total = j.lap(l, s, kill.kill.Wall, kill.kill.Lap == hanging.Left)
	}
	if kill.kill.Kind == hanging.OnWall && j.fixed.isKeptOff(kill.kill.Wall, s.X) {
		total += offWeight
	}
	if !j.isDesigned() {
		return total
	}
	miss := misfit(s)
	if miss == 0 {
		if j.out != nil {
			j.raise(KillMeets, finding.Note, 0, kill.place(j))
		}
		return total
	}
	regard, seen := j.killSeen(kill)
	g := regard.kill(share(j.taste.Weights.KillMetre, miss, fullMiss), seen)
	if j.out != nil {
		severity := finding.Caution
		if kill.height == 0 { // no paper hangs there
			severity = finding.Note
		}
		j.raise(KillMisfit, severity, g, kill.place(j),
			size("across", widest(s.Across)), size("along", s.Along), size("height", kill.height))
	}
	return total + g
}

// killSeen returns how much a kill place is looked at, and how much of its height
// counts.
func (j *judge) killSeen(k *killPlace) (regard, measure.Length) {
	if k.kill.Kind == hanging.AtCorner {
		f := &j.corners[k.kill.Wall]
		return f.regard, f.seen
	}
	w := &j.walls[k.kill.Wall]
	first := k.sight == room.Plain && w.first
	if k.opening >= 0 {
		return regardOf(k.sight, first), w.holes[k.opening].seen
	}
	return regardOf(k.sight, first), j.seenAt(k.kill.Wall, k.kill.X)
}
