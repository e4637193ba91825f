package order

import (
	"firstdrop/cutting"
	"firstdrop/measure"
)

// Job is a paper's part of a plan, before the order.
type Job struct {
	// Plan is how the pieces are to be cut. Rolls in hand are as long as it says;
	// the length of those to be bought is taken for the label's. Rolls of unknown
	// start turn out to begin at any phase, all equally likely. A plan that lacks
	// paper is refused.
	Plan *cutting.Solution
	// Pack is how many rolls are sold together where the plan's question names no
	// stock; 0 means 1.
	Pack int
	// Pieces are those of the plan's question, in its order.
	Pieces []Piece
	// Progress, if not nil, is told now and then how many of the jobs are simulated.
	Progress func(done, of int)
}

// Share is an exact fraction: Of out of All.
type Share struct {
	Of, All int
}

// AtLeast reports whether the share is at least that many in a thousand.
func (s Share) AtLeast(perMille int) bool { return s.Of*1000 >= perMille*s.All }

// Point says in how many simulated jobs a number of rolls is enough.
type Point struct {
	Rolls int
	Jobs  int
}

// Curve says how sure a count of rolls to buy is, besides those in hand. Each share comes from a finite number
// of jobs: of n jobs, a true chance of p shows within ±2·√(p·(1−p)/n) in about
// 19 of 20 curves (±1 in a hundred at most with 10 000 jobs).
type Curve struct {
	Rolls int // of the plan, in whole packs
	Jobs  int
	Seed  uint64
	// Buys lists the sizes that the plan buys, the longest first. Where there are
	// several a number of rolls means: these, and beyond them rolls of the size
	// Spare; fewer, without the shortest (or, of goods that must be cut in hanging
	// order, without those cut last).
	Buys []Size
	// Spare is the size of which more would be bought: of those from which every
	// piece can be cut the one of which a roll, or a pack, costs least. Its Rolls
	// are those of the plan. No size, of length 0, where no more are to be had.
	Spare Size
	// Enough is ascending, in whole packs and without other gaps. It begins with
	// one pack less than the plan's, or with the least count that is ever enough
	// if that is lower, and ends with one more than the plan's, or with the count
	// that is enough in every job that can be done at all, if that is higher; but
	// never with more rolls than are to be had.
	Enough []Point
	// Proven is the number of jobs in which every planning was shown to use
	// fewest rolls. In the others a hanger with more patience may need fewer.
	Proven int
	// Never is the number of jobs given up: a piece came out longer than any
	// roll, more rolls were needed than are to be had, or more than 32 and twice
	// the plan's.
	Never int
}

// At returns the share of jobs in which that many rolls are enough.
func (c *Curve) At(rolls int) Share {
	s := Share{All: c.Jobs}
	for _, p := range c.Enough {
		if p.Rolls <= rolls {
			s.Of = p.Jobs
		}
	}
	return s
}

// Planned returns the share of jobs in which the plan's rolls are enough.
func (c *Curve) Planned() Share { return c.At(c.Rolls) }

// OneLess returns the share of jobs in which one roll less, or one pack, is
// enough.
func (c *Curve) OneLess() Share { return c.At(c.Rolls - 1) }

// OneMore returns the share of jobs in which one roll more, or one pack, is
// enough.
func (c *Curve) OneMore() Share { return c.At(c.Rolls + max(c.Spare.Pack, 1)) }

// Fewest returns the fewest rolls that are enough in at least that many of a
// thousand jobs; false if there is no such number. Nought in a thousand takes
// no rolls.
func (c *Curve) Fewest(perMille int) (rolls int, ok bool) {
	if perMille <= 0 {
		return 0, true
	}
	for _, p := range c.Enough {
		if (Share{p.Jobs, c.Jobs}).AtLeast(perMille) {
			return p.Rolls, true
		}
	}
	return 0, false
}

// Certainty simulates a job many times as it may turn out and counts the rolls
// that a hanger needs who plans well. The same job, chances, number and seed
// give the same curve on every machine. It is meant for a thousand jobs or
// more; at least one and at most a million are simulated.
//
// What happens in a simulated job:
//
//   - Each roll is as long as Chances.Length allows and begins at any phase.
//   - Each wall turns out higher or lower than measured. The hanger measures
//     again before cutting. A piece is cut as planned as long as what it must
//     cover leaves Chances.Trim of its length to trim; otherwise it is cut as
//     long as that takes, rounded up to Chances.Step. What is added lies at the
//     end that comes off the roll last: the phase at the leading end stays.
//     Nothing is cut shorter than planned.
//   - A cut piece turns out spoiled by chance and is cut once more, at the same
//     phase, from what is there. That shows only when it has been cut.
//   - Rolls in hand are as they were measured; of one that nobody has opened the
//     design begins anywhere.
//   - A strip of narrow pieces is one cut: it grows where one of them must, and
//     is spoiled as a whole.
//   - Goods that must be cut in hanging order come off the rolls strictly so,
//     and the rolls come in the order in which the plan cuts from them. A spoiled
//     piece is cut again before the next one.
//   - All other rolls at hand are opened before cutting, and pieces are assigned to
//     them so that fewest are needed, anew after each spoiled piece: exactly,
//     unless a search is given up ([Curve].Proven). Where there are too many
//     kinds of pieces for that (more than 8192 sets of pieces that fit a roll, or
//     2048 in a job whose heights matter), the hanger keeps to the plan's rolls or
//     fills roll after roll, whichever does, and places only what does not go to
//     plan, piece by piece.
//
// So the number is never below what perfect foresight would need. It is the
// number of rolls to have, from one batch, and says nothing of widths.
func Certainty(job Job, chances Chances, jobs int, seed uint64) (*Curve, error) {
	t, err := newTrial(job, &chances)
	if err != nil {
		return nil, err
	}
	if jobs < 1 || jobs > 1_000_000 {
		return nil, &ChanceError{"number of jobs", "must be 1 to 1,000,000"}
	}
	c := &Curve{Rolls: len(t.supply.order), Jobs: jobs, Seed: seed, Buys: t.supply.bought()}
	if t.supply.spare >= 0 {
		c.Spare = t.supply.sizes[t.supply.spare].Size
	}
	taken := make([]int, t.supply.most+1)
	for i := range jobs {
		if job.Progress != nil && i%toldJobs == 0 {
			job.Progress(i, jobs)
		}
		rolls, ok := t.run(seed, i)
		if t.proven {
			c.Proven++
		}
		if !ok {
			c.Never++
			continue
		}
		taken[rolls]++
	}
	c.points(taken, t.supply.counts(t.spec.InOrder))
	return c, nil
}

// toldJobs is after how many jobs is told how many are simulated.
const toldJobs = 50

// points sums up how many jobs took how many rolls, at the counts that can be had.
func (c *Curve) points(taken, counts []int) {
	sum, rolls := 0, 0
	for i, n := range counts {
		for ; rolls <= n; rolls++ {
			sum += taken[rolls]
		}
		switch {
		case sum == 0 && i+1 < len(counts) && counts[i+1] < c.Rolls:
			continue // fewer than one less, and never enough
		case i > 0 && n > c.Rolls && counts[i-1] > c.Rolls && c.Enough[len(c.Enough)-1].Jobs == c.Jobs-c.Never:
			return // more than one more, and enough before
		}
		c.Enough = append(c.Enough, Point{n, sum})
	}
}

// newTrial prepares what all simulated jobs have in common.
func newTrial(job Job, chances *Chances) (*trial, error) {
	if err := chances.check(); err != nil {
		return nil, err
	}
	if job.Plan == nil || job.Plan.Problem == nil {
		return nil, &ChanceError{"plan", "is missing"}
	}
	spec := job.Plan.Problem.Spec()
	if err := job.check(spec); err != nil {
		return nil, err
	}
	supply, err := newSupply(&job, 2*len(job.Plan.Rolls)+32)
	if err != nil {
		return nil, err
	}
	t := &trial{
		source:  source{chances: chances, repeat: spec.Repeat},
		pieces:  job.Pieces,
		spec:    spec,
		supply:  supply,
		weights: job.Plan.Certificate.Weights,
		kept:    keptRolls(job.Plan),
	}
	if len(t.weights) != len(job.Pieces) {
		t.weights = make([]int64, len(job.Pieces)) // without a certificate nothing is told by weight
	}
	longest := supply.longestOnSale()
	longest += longest.Scaled(int64(chances.Length), 1000)
	t.base.repeat = int64(spec.Repeat)
	t.base.most = max(int64(longest-spec.Lead), supply.longest) + int64(spec.Loss)
	t.known = make([]int, len(job.Pieces))
	for i, p := range job.Pieces {
		t.known[i] = t.base.add(int64(p.Length+spec.Loss), int64(p.Phase.Mod(spec.Repeat)), t.weights[i])
	}
	t.base.limit = maxSets
	t.base.list()
	if t.base.full {
		t.base.climb()
	}
	t.planned = membersOf(t.known, t.base.kinds())
	return t, nil
}

func (j Job) check(spec cutting.Spec) error {
	if len(j.Pieces) != len(spec.Pieces) {
		return &ChanceError{"pieces", "must be those of the plan"}
	}
	for i, p := range j.Pieces {
		if p.Piece != spec.Pieces[i] {
			return &ChanceError{"pieces", "must be those of the plan"}
		}
		if p.Need < 0 || p.Need > p.Length || p.Need > measure.MaxLength {
			return &ChanceError{"pieces", "must be at least as long as what they cover"}
		}
	}
	return nil
}
