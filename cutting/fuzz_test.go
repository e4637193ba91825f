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
	f.Add([]byte{13, 0, 9, 0, 4, 0, 20, 0, 7, 0, 20, 0, 7}, uint64(9), uint64(40), uint64(3))
	f.Add([]byte{16 + 64, 0, 9, 0, 4, 0, 20, 0, 7, 0, 19, 0, 7, 0, 12, 0, 1}, uint64(9), uint64(40), uint64(3))
	f.Add([]byte{8 + 16 + 128, 0, 9, 0, 4, 0, 20, 0, 7, 0, 19, 0, 7, 0, 12, 0, 1}, uint64(9), uint64(40), uint64(3))
	f.Fuzz(func(t *testing.T, data []byte, repeat, roll, start uint64) {
		if len(data) == 0 {
			return
		}
		s := Spec{Repeat: measure.Length(repeat), Roll: Roll{Length: measure.Length(roll)}}
		if data[0]&1 == 1 {
			s.Roll.Start = StartAt(measure.Length(start))
		}
		scale, bits := measure.Length(1), data[0]
		if bits&2 == 2 {
			scale = mm
		}
		for data = data[1:]; len(data) >= 4 && len(s.Pieces) < 40; data = data[4:] {
			s.Pieces = append(s.Pieces, Piece{
				scale * measure.Length(binary.BigEndian.Uint16(data)),
				scale * measure.Length(binary.BigEndian.Uint16(data[2:])),
			})
		}
		s.InOrder = bits&4 == 4
		if bits&8 == 8 {
			s.Stock = []Stock{
				{Roll: s.Roll, Pack: int(bits >> 6)},
				{Roll: Roll{s.Roll.Length * 2 / 3, s.Roll.Start}, Count: 1 + int(bits>>5)&1, InHand: true},
			}
		}
		o := Options{Steps: 20_000}
		if bits&16 == 16 {
			o.First, o.Then = FewestChanges, []Goal{LongestLeftover}
		}
		p, err := NewProblem(s)
		if err != nil {
			return
		}
		sol := Solve(p, o)
		for _, err := range sol.Check() {
			t.Error(err)
		}
		if bits&(4+8+16) == 0 && len(s.Pieces) > 0 && len(s.Pieces) <= 5 && s.Repeat < 40 && s.Roll.Length < 100_000 {
			if want := newBrute(s).rolls(); len(sol.Rolls) != want {
				t.Errorf("%d rolls, brute force %d", len(sol.Rolls), want)
			}
		}
	})
}
