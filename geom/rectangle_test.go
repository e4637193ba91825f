package geom

import "testing"

func TestIsRectangle(t *testing.T) {
	tests := []struct {
		name string
		ring Ring
		want bool
	}{
		{"upright", Ring{{0, 0}, {4, 0}, {4, 3}, {0, 3}}, true},
		{"other way round, other corner first", Ring{{4, 3}, {4, 0}, {0, 0}, {0, 3}}, true},
		{"bow tie", Ring{{0, 0}, {4, 3}, {4, 0}, {0, 3}}, false},
		{"trapezoid", Ring{{0, 0}, {4, 0}, {3, 3}, {0, 3}}, false},
		{"diamond", Ring{{2, 0}, {4, 2}, {2, 4}, {0, 2}}, false},
		{"five corners", Ring{{0, 0}, {2, 0}, {4, 0}, {4, 3}, {0, 3}}, false},
		{"back and forth", Ring{{0, 0}, {4, 0}, {0, 0}, {4, 0}}, false},
		{"flat", Ring{{0, 0}, {4, 0}, {4, 0}, {0, 0}}, false},
	}
	for _, tt := range tests {
		if got := tt.ring.IsRectangle(); got != tt.want {
			t.Errorf("%s: IsRectangle = %v, want %v", tt.name, got, tt.want)
		}
	}
}
