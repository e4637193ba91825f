package cutting

// How many stretches are needed at least?
//
// Give every piece a price, and let a roll earn the prices of its pieces less
// one for every stretch it hangs. Then whatever the prices,
//
//	stretches ≥ all prices - what the rolls can earn
//
// and the most a roll can earn is found from the last piece backwards, for
// each set it may hold already, at hand or put aside:
//
//	hand(i, s)  = max of  price(i) + hand(i+1, s with piece i)   go on
//	                      aside(i+1, s)                          put it aside
//	aside(i, s) = max of  hand(i, s) - 1 by going on             fetch it
//	                      aside(i+1, s)
//
// The same tables bound what is left of any way to hang the first pieces: the
// prices to come less what each of its rolls can still earn. Prices are moved
// towards the pieces that such rolls leave out, as long as that raises the
// bound; a second set of prices, the weights of the certificate, only says
// whether the rolls can carry the rest. All is in whole numbers.
type hangPrices struct {
	sets  int
	price []int64
	rest  []int64 // of the prices, from each piece on
	hand  []int64 // [i*sets+s]
	aside []int64
	heavy []int64 // the most weight that can still be added, likewise
	load  []int64 // weight to come
	best  []int64 // scratch: the best prices
	move  []int64 // scratch: direction
	count []int64 // scratch: rolls that hold each piece
}

// priceOfStretch is the price of one stretch.
const priceOfStretch = int64(1) << 20

// rollPrice is what a full roll is worth at first. Worth a few stretches, it
// makes waste dear, which is what forces rolls to be returned to.
const rollPrice = 6 * priceOfStretch

// priceRounds is how often prices are moved.
const priceRounds = 150

// need is the fewest stretches that hang the pieces from number i on, with the
// rolls as they are, the last being at hand; ok is false if there is none.
func (h *hangPrices) need(i int, rolls []int32) (stretches int, ok bool) {
	aside, heavy := h.aside[i*h.sets:], h.heavy[i*h.sets:]
	k := len(rolls) - 1
	earn, carry := h.hand[i*h.sets+int(rolls[k])], heavy[rolls[k]]
	for _, s := range rolls[:k] {
		earn += aside[s]
		carry += heavy[s]
	}
	if carry < h.load[i] {
		return 0, false
	}
	return max(0, int((h.rest[i]-earn+priceOfStretch-1)>>20)), true
}

// priceHanging finds prices for hanging on k rolls, most stretches being known
// to suffice. It returns a number of stretches that no plan undercuts.
func (w *work) priceHanging(k, most int) int {
	l := &w.hang.layers
	h, n := &l.prices, len(w.p.kindOf)
	h.sets = len(l.rolls.next) / w.m
	cells := (n + 1) * h.sets
	h.hand, h.aside, h.heavy = grow(h.hand, cells), grow(h.aside, cells), grow(h.heavy, cells)
	h.price, h.best, h.move, h.count = grow(h.price, n), grow(h.best, n), grow(h.move, n), grow(h.count, n)
	h.rest, h.load = grow(h.rest, n+1), grow(h.load, n+1)
	h.weigh(w)
	for i, j := range w.p.kindOf {
		h.price[i] = rollPrice * w.lower.weight[j] / max(w.lower.capacity, 1)
		h.move[i] = 0
	}
	bound, step := int64(-1<<60), int64(64)
	for round, idle := 0, 0; round < priceRounds && !w.spent(); round++ {
		w.steps += 1 + cells/200
		b := h.fill(w, k)
		if b > bound {
			bound, idle = b, 0
			copy(h.best, h.price)
		} else if idle++; idle == 8 {
			step, idle = step*2/3, 0
		}
		if bound > int64(most-1)*priceOfStretch {
			break
		}
		h.step(w, k, step*max(int64(most)*priceOfStretch-b, priceOfStretch/4)/64)
	}
	copy(h.price, h.best)
	b := h.fill(w, k)
	return int((max(b, 0) + priceOfStretch - 1) >> 20)
}

// weigh fills heavy by the weights of the certificate.
func (h *hangPrices) weigh(w *work) {
	next, n := w.hang.layers.rolls.next, len(w.p.kindOf)
	h.load[n] = 0
	clear(h.heavy[n*h.sets : (n+1)*h.sets])
	for i := n - 1; i >= 0; i-- {
		j := int(w.p.kindOf[i])
		weight := w.lower.weight[j]
		h.load[i] = h.load[i+1] + weight
		now, then := h.heavy[i*h.sets:(i+1)*h.sets], h.heavy[(i+1)*h.sets:]
		for s := range now {
			now[s] = then[s]
			if to := next[s*w.m+j]; to >= 0 {
				now[s] = max(now[s], weight+then[to])
			}
		}
	}
}

// fill makes the tables for the prices and returns the bound they prove.
func (h *hangPrices) fill(w *work, k int) int64 {
	rolls, n := &w.hang.layers.rolls, len(w.p.kindOf)
	h.rest[n] = 0
	clear(h.hand[n*h.sets : (n+1)*h.sets])
	clear(h.aside[n*h.sets : (n+1)*h.sets])
	for i := n - 1; i >= 0; i-- {
		j := int(w.p.kindOf[i])
		price := h.price[i]
		h.rest[i] = h.rest[i+1] + price
		hand, aside := h.hand[i*h.sets:(i+1)*h.sets], h.aside[i*h.sets:(i+1)*h.sets]
		onHand, after := h.hand[(i+1)*h.sets:(i+2)*h.sets], h.aside[(i+1)*h.sets:(i+2)*h.sets]
		for s := range hand {
			hand[s], aside[s] = after[s], after[s]
			if to := rolls.next[s*w.m+j]; to >= 0 {
				on := price + onHand[to]
				hand[s] = max(hand[s], on)
				aside[s] = max(aside[s], on-priceOfStretch)
			}
		}
	}
	bound := h.rest[0] - int64(k)*h.aside[0]
	if rolls.limited {
		bound += h.aside[0] - h.aside[rolls.short]
	}
	return bound
}

// step moves the prices so far: up for the pieces that the rolls that earn most
// leave out, down for those that they hold.
func (h *hangPrices) step(w *work, k int, far int64) {
	rolls := &w.hang.layers.rolls
	clear(h.count)
	if rolls.limited {
		h.earner(w, int(rolls.short), 1)
		k--
	}
	h.earner(w, 0, int64(k))
	norm := int64(0)
	for i := range h.move {
		h.move[i] = (h.move[i]*7 + (1-h.count[i])*3*1024) / 10
		norm += h.move[i] * h.move[i] / 1024
	}
	if norm == 0 {
		return
	}
	for i := range h.price {
		h.price[i] += far * h.move[i] / norm
	}
}

// earner counts the pieces of a roll that earns most, beginning with a set.
func (h *hangPrices) earner(w *work, s int, many int64) {
	next := w.hang.layers.rolls.next
	hand := false
	for i, j := range w.p.kindOf {
		now := h.aside[i*h.sets+s]
		if hand {
			now = h.hand[i*h.sets+s]
		}
		if now == h.aside[(i+1)*h.sets+s] {
			hand = false
			continue
		}
		s, hand = int(next[s*w.m+int(j)]), true
		h.count[i] += many
	}
}
