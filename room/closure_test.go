package room

import (
	"math"
	"testing"

	"firstdrop/measure"
)

// side is one side of a published traverse: its azimuth, clockwise from north,
// in degrees, minutes and seconds, and its length in hundredths of a foot.
type side struct{ degrees, minutes, seconds, feet100 int64 }

func (s side) azimuth() measure.Angle {
	return measure.Angle(s.degrees*3600+s.minutes*60+s.seconds) * deg / 3600
}

// Published closed traverses, with their misclosures as printed. Our X runs
// along the first side and Y to its left. Printed latitudes and departures are
// rounded, and add up to the misclosure.
func TestClosureOfPublishedTraverses(t *testing.T) {
	for _, c := range []struct {
		source      string
		sides       []side
		north, east float64 // printed misclosure in feet
		gap         float64
		rounding    float64
	}{
		{
			// Five sides, clockwise; 0.89 over 2466.05, 1 in 2771.
			source: "Purdue University, Traverse calculations, engineering.purdue.edu/~asm215/topics/travcalc.html",
			sides: []side{
				{26, 10, 0, 285_10}, {104, 35, 0, 610_45}, {195, 30, 0, 720_48}, {358, 18, 0, 203_00}, {306, 54, 0, 647_02},
			},
			north: -0.71, east: 0.53, gap: 0.89, rounding: 0.02,
		},
		{
			// Four sides, counter-clockwise: the ground is on the left, as when
			// one goes round a pillar. Latitudes 289.883 − 129.611 − 166.460 +
			// 6.144, departures −120.733 − 230.556 + 133.691 + 217.603.
			source: "worked exercise on the compass rule, justaaa.com/civil-engineering/19749",
			sides: []side{
				{337, 23, 20, 314_02}, {240, 39, 24, 264_49}, {141, 13, 50, 213_50}, {88, 22, 58, 217_69},
			},
			north: -0.044, east: 0.005, gap: 0.045, rounding: 0.002,
		},
	} {
		s := &Survey{}
		for i, side := range c.sides {
			s.Widths = append(s.Widths, LengthReading{Length: measure.Length(side.feet100) * measure.Foot / 100})
			turn := c.sides[(i+1)%len(c.sides)].azimuth() - side.azimuth() // to the right
			s.Angles = append(s.Angles, AngleReading{Angle: (180*deg - turn).Normalized()})
		}
		got := s.closure()
		feet := func(f float64) measure.Length { return length(f * metres(measure.Foot)) }
		first := radians(c.sides[0].azimuth())
		along := feet(c.north*math.Cos(first) + c.east*math.Sin(first))
		left := feet(c.north*math.Sin(first) - c.east*math.Cos(first))
		if max(got.Angular, -got.Angular) > 5 { // seconds are no whole microdegrees
			t.Errorf("%s: angular misclosure %v", c.source, got.Angular)
		}
		if !near(got.MisclosureX, along, feet(c.rounding)) || !near(got.MisclosureY, left, feet(c.rounding)) {
			t.Errorf("%s: misclosure %v, %v; printed %v, %v", c.source, got.MisclosureX, got.MisclosureY, along, left)
		}
		if !near(got.Misclosure, feet(c.gap), feet(c.rounding)/2) {
			t.Errorf("%s: misclosure %v, printed %v", c.source, got.Misclosure, feet(c.gap))
		}
	}
}

// A textbook traverse of five sides with measured angles (Ghilani and Wolf,
// Elementary Surveying, chapter 10; figures from memory): the angles miss by
// 11", and after they have their share the sides miss by 0.026 in departure and
// 0.077 in latitude, 0.081 ft together.
func TestClosureOfATraverseFromMemory(t *testing.T) {
	s := &Survey{}
	for _, side := range []struct{ feet, degrees, minutes, seconds int64 }{ // side to B, angle at B, ...
		{64725, 231, 23, 43}, {20303, 17, 12, 59}, {72035, 89, 3, 28}, {61024, 101, 34, 24}, {28513, 100, 45, 37},
	} {
		s.Widths = append(s.Widths, LengthReading{Length: measure.Length(side.feet) * measure.Foot / 100})
		seconds := side.degrees*3600 + side.minutes*60 + side.seconds
		s.Angles = append(s.Angles, AngleReading{Angle: measure.Angle(seconds) * deg / 3600})
	}
	c := s.closure()
	if want := 11 * deg / 3600; max(c.Angular-want, want-c.Angular) > 5 {
		t.Errorf("angular misclosure %v, want %v", c.Angular, want)
	}
	if want := 81 * measure.Foot / 1000; !near(c.Misclosure, want, measure.Foot/1000) {
		t.Errorf("misclosure %v, want %v", c.Misclosure, want)
	}
}

func TestExactPlansClose(t *testing.T) {
	for name, d := range map[string]drawing{
		"an L":           {{0, 4}, {5, 4}, {5, 2}, {3, 2}, {3, 0}, {0, 0}},
		"a bay":          {{0, 0}, {0, 3}, {1, 4}, {3, 4}, {4, 3}, {4, 0}},
		"a pillar":       {{0, 0}, {1, 0}, {1, 1}, {0, 1}}, // the room is outside
		"a triangle":     {{0, 0}, {0, 3}, {4, 0}},
		"chimney breast": {{0, 0}, {0, 3}, {1, 3}, {1, 2.6}, {2.5, 2.6}, {2.5, 3}, {4, 3}, {4, 0}},
	} {
		s := d.survey()
		s.Diagonals = append(s.Diagonals, d.across(0, 2), d.across(2, 1))
		a, err := s.Adjust()
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if max(a.Angular, -a.Angular) > 10 || a.Misclosure > 100*measure.Nanometre {
			t.Errorf("%s: misses by %v and %v", name, a.Angular, a.Misclosure)
		}
		for i, w := range a.Widths {
			if !near(w, s.Widths[i].Length, 100) {
				t.Errorf("%s: wall %d is changed to %v", name, i, w)
			}
		}
	}
}
