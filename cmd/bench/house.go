package main

import (
	"fmt"
	"strings"
)

// A job is one room, so that a house is twelve jobs, printed one after the other. Rooms
// and papers are invented; sizes are those of an ordinary house of two floors (common
// practice): each room has its door on the first wall and its windows on the third.

// chamber is one room of the house: its sizes in millimetres, and its paper.
type chamber struct {
	name                  string
	along, across, height int
	windows               int // on the wall opposite the door
	sockets               int // on the wall to the right of the door
	width, roll, repeat   int // of the paper
	match, paste          string
}

// chambers are the twelve rooms.
var chambers = []chamber{
	{"hall", 5200, 1900, 2500, 0, 2, 530, 10050, 0, "free", "wall"},
	{"living room", 5600, 4300, 2500, 2, 4, 530, 10050, 640, "half drop", "wall"},
	{"dining room", 4200, 3600, 2500, 1, 3, 685, 10000, 530, "straight", "wall"},
	{"kitchen", 3800, 3200, 2500, 1, 5, 530, 10050, 265, "straight", "paper"},
	{"study", 3300, 2700, 2500, 1, 3, 520, 10050, 320, "straight", "wall"},
	{"cloakroom", 1800, 1500, 2500, 0, 0, 530, 10050, 190, "straight", "paper"},
	{"landing", 3900, 1600, 2420, 1, 1, 530, 10050, 0, "free", "wall"},
	{"main bedroom", 4600, 3900, 2420, 2, 4, 530, 10050, 530, "offset 1/3", "wall"},
	{"second bedroom", 3900, 3300, 2420, 1, 3, 530, 10050, 640, "half drop", "wall"},
	{"third bedroom", 3400, 2900, 2420, 1, 2, 530, 10050, 530, "straight", "wall"},
	{"guest room", 3100, 2800, 2420, 1, 2, 700, 10050, 0, "free", "wall"},
	{"dressing room", 2400, 2200, 2420, 0, 1, 530, 10050, 320, "half drop", "paper"},
}

// job writes the room as a job document.
func (c *chamber) job() string {
	var b strings.Builder
	fmt.Fprintf(&b, "firstdrop: 1\nname: %s (invented)\nunits: mm\nroom:\n  height: %d\n  closed: true\n  walls:\n", c.name, c.height)
	fmt.Fprintf(&b, "    - name: A\n      width: %d\n      openings:\n        - {name: door, kind: door, left: 300, width: 826, height: 2040}\n", c.along)
	fmt.Fprintf(&b, "    - name: B\n      width: %d\n", c.across)
	for i := range c.sockets {
		if i == 0 {
			b.WriteString("      fittings:\n")
		}
		fmt.Fprintf(&b, "        - {kind: socket, at: [%d, 300], size: [86, 86]}\n", c.across*(i+1)/(c.sockets+1))
	}
	fmt.Fprintf(&b, "    - name: C\n      width: %d\n", c.along)
	for i := range c.windows {
		if i == 0 {
			b.WriteString("      openings:\n")
		}
		fmt.Fprintf(&b, "        - {name: window %d, kind: window, left: %d, width: 1200, sill: 900, height: 1250}\n", i+1, c.along*(2*i+1)/(2*c.windows)-600)
	}
	fmt.Fprintf(&b, "    - name: D\n      width: %d\npapers:\n  - {name: Paper of the %s (invented), width: %d, roll: %d, match: %s, paste: %s", c.across, c.name, c.width, c.roll, c.match, c.paste)
	if c.repeat > 0 {
		fmt.Fprintf(&b, ", repeat: %d", c.repeat)
	}
	b.WriteString("}\n")
	return b.String()
}
