package room

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

func TestCholesky(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 8))
	for n := 1; n < 9; n++ {
		root, x, b := make([][]float64, n), make([]float64, n), make([]float64, n)
		full, lower := make([][]float64, n), make([][]float64, n)
		for i := range n {
			x[i] = random.NormFloat64()
			for range n + 2 {
				root[i] = append(root[i], random.NormFloat64())
			}
		}
		for i := range n {
			for j := range n {
				full[i] = append(full[i], dot(root[i], root[j]))
			}
			lower[i] = slices.Clone(full[i][:i+1])
			b[i] = dot(full[i], x)
		}
		l, ok := cholesky(lower)
		if !ok {
			t.Fatalf("%d: refused", n)
		}
		for i, got := range l.solve(b) {
			if math.Abs(got-x[i]) > 1e-6 {
				t.Errorf("%d: x[%d] = %g, want %g", n, i, got, x[i])
			}
		}
		if got, want := l.square(b), dot(x, b); math.Abs(got-want) > 1e-6*want {
			t.Errorf("%d: square %g, want %g", n, got, want)
		}
	}
	if _, ok := cholesky([][]float64{{4}, {2, 1}}); ok {
		t.Error("takes a matrix whose second row is half the first")
	}
	if _, ok := cholesky([][]float64{{math.NaN()}}); ok {
		t.Error("takes a matrix that is none")
	}
}
