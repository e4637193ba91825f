package room

import (
	"math"
	"testing"

	"firstdrop/measure"
)

// A published closed traverse of five sides (Purdue University, "Traverse
// calculations", engineering.purdue.edu/~asm215/topics/travcalc.html): lengths
// in feet and azimuths as printed, with a misclosure of −0.71 in latitude
// (north) and +0.53 in departure (east), 0.89 together over 2466.05. Our X runs
// along the first side, at 26° 10'. The printed latitudes and departures are
// rounded to 0.01 each.
func TestClosureOfAPublishedTraverse(t *testing.T) {
	sides := []struct{ degrees, minutes, feet, hundredths int64 }{
		{26, 10, 285, 10}, {104, 35, 610, 45}, {195, 30, 720, 48}, {358, 18, 203, 0}, {306, 54, 647, 2},
	}
	s := &Survey{}
	azimuth := func(i int) measure.Angle {
		side := sides[i%len(sides)]
		return measure.Angle(side.degrees*60+side.minutes) * deg / 60
	}
	for i, side := range sides {
		s.Widths = append(s.Widths, LengthReading{Length: measure.Length(100*side.feet+side.hundredths) * measure.Foot / 100})
		turn := (azimuth(i+1) - azimuth(i)).Normalized() // to the right
		s.Angles = append(s.Angles, AngleReading{Angle: (180*deg - turn).Normalized()})
	}
	a, err := s.Adjust()
	if err != nil {
		t.Fatal(err)
	}
	const hundredth = measure.Foot / 100
	north, east, first := -0.71, 0.53, radians(azimuth(0))
	along := length((north*math.Cos(first) + east*math.Sin(first)) * metres(measure.Foot))
	left := length((north*math.Sin(first) - east*math.Cos(first)) * metres(measure.Foot))
	if max(a.Angular, -a.Angular) > 5 { // the minutes are no whole microdegrees
		t.Errorf("angular misclosure %v", a.Angular)
	}
	if !near(a.MisclosureX, along, 2*hundredth) || !near(a.MisclosureY, left, 2*hundredth) {
		t.Errorf("misclosure %v, %v; printed %v, %v", a.MisclosureX, a.MisclosureY, along, left)
	}
	if !near(a.Misclosure, 89*hundredth, hundredth) {
		t.Errorf("misclosure %v, printed %v", a.Misclosure, 89*hundredth)
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
