package order

// cutInOrder plays a job whose goods shade: every piece comes off where the one
// before ended, or from the beginning of the next roll, and what is left of a
// roll is not used again. It returns false when the paper does not suffice.
func (t *trial) cutInOrder() bool {
	if len(t.pieces) == 0 {
		return true
	}
	at, turn := 0, 0
	for piece := 0; piece < len(t.pieces); {
		for at == len(t.rolls) {
			if !t.takeTurn(turn) {
				return false
			}
			turn++
		}
		s := &t.rolls[at]
		to := t.set.after(s.x, t.kindOf[piece])
		if to > s.end {
			at++
			continue
		}
		s.x = to
		t.times[piece]++
		if !t.source.spoiled(piece, int(t.times[piece])) {
			piece++
		}
	}
	return true
}

// takeTurn opens the roll whose turn it is.
func (t *trial) takeTurn(n int) bool {
	if turns := t.supply.turns; n < len(turns) && turns[n] != bought {
		t.takeHeld(turns[n])
		return true
	}
	return t.open()
}
