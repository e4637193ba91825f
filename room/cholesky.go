package room

import "math"

// factor is a triangle L of rows with L·Lᵀ = M, for a symmetric matrix M all of
// whose squares xᵀMx are positive.
type factor [][]float64

// cholesky factors the matrix given by its lower triangle, in place; not ok
// when its conditions contradict or repeat each other.
func cholesky(m [][]float64) (l factor, ok bool) {
	for r := range m {
		for c := range r {
			m[r][c] = (m[r][c] - dot(m[r][:c], m[c][:c])) / m[c][c]
		}
		rest := m[r][r] - dot(m[r][:r], m[r][:r])
		if !(rest > 1e-12*m[r][r]) { // also for NaN
			return nil, false
		}
		m[r][r] = math.Sqrt(rest)
	}
	return m, true
}

// solve returns x with M·x = b.
func (l factor) solve(b []float64) []float64 {
	x := l.forward(b)
	for r := len(l) - 1; r >= 0; r-- {
		for c := r + 1; c < len(l); c++ {
			x[r] -= l[c][r] * x[c]
		}
		x[r] /= l[r][r]
	}
	return x
}

// square returns bᵀ M⁻¹ b.
func (l factor) square(b []float64) float64 {
	y := l.forward(b)
	return dot(y, y)
}

// forward returns y with L·y = b.
func (l factor) forward(b []float64) []float64 {
	y := make([]float64, len(b))
	for r := range l {
		y[r] = (b[r] - dot(l[r][:r], y[:r])) / l[r][r]
	}
	return y
}

func dot(a, b []float64) (sum float64) {
	for i := range a {
		sum += a[i] * b[i]
	}
	return sum
}
