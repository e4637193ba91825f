package cutting

import (
	"encoding/binary"
	"testing"

	"firstdrop/measure"
)

// FuzzSolve feeds arbitrary numbers: either NewProblem refuses them, or the
// plan passes its checks, and small ones agree with brute force.
func FuzzSolve(f *testing.F) {
	f.Add([]byte{0}, uint64(12), uint64(30), uint64(5))
	f.Add([]byte{1, 0, 9, 0, 4, 0, 20, 0, 7, 0, 20, 0, 7}, uint64(9), uint64(40), uint64(3))
	f.Add([]byte("papering a small room with odd sizes"), uint64(640_000_000), uint64(10_050_000_000), uint64(1))
	f.Fuzz(func(t *testing.T, data []byte, repeat, roll, start uint64) {
		if len(data) == 0 {
			return
		}
		s := Spec{Repeat: measure.Length(repeat), Roll: Roll{Length: measure.Length(roll)}}
		if data[0]&1 == 1 {
			s.Roll.Start = StartAt(measure.Length(start))
		}
		scale := measure.Length(1)
		if data[0]&2 == 2 {
			scale = mm
		}
		for data = data[1:]; len(data) >= 4 && len(s.Pieces) < 40; data = data[4:] {
			s.Pieces = append(s.Pieces, Piece{
				scale * measure.Length(binary.BigEndian.Uint16(data)),
				scale * measure.Length(binary.BigEndian.Uint16(data[2:])),
			})
		}
		p, err := NewProblem(s)
		if err != nil {
			return
		}
		sol := Solve(p, Options{Steps: 20_000})
		for _, err := range sol.Check() {
			t.Error(err)
		}
		if len(s.Pieces) > 0 && len(s.Pieces) <= 5 && s.Repeat < 40 && s.Roll.Length < 100_000 {
			if want := newBrute(s).rolls(); len(sol.Rolls) != want {
				t.Errorf("%d rolls, brute force %d", len(sol.Rolls), want)
			}
		}
	})
}
