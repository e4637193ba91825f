package main

// topic is a page of help that belongs to no command.
type topic struct{ name, short, long string }

var topics = []topic{
	{"exit-codes", "What the exit codes mean", `  0    done
  1    the job has errors, or asks for what cannot be hung: nothing was planned
  2    the command, a flag or an argument is wrong
  3    a file could not be read, or must not be written over
  70   a fault of the program, such as a plan that fails its own audit: nothing
       was shown and nothing was written
  130  interrupted; no file is left half written

Findings, even serious ones, are no errors: the code stays 0.`},
	{"words", "What the words mean", `  drop         one vertical length of paper as hung (a strip)
  piece        a part of a drop cut as one length; over a door it is a short one
  seam         the line where two neighbouring drops meet
  head, foot   upper and lower end of a drop, a wall or an opening
  plumb line   the vertical pencil line that a drop is set to
  datum        a level line round the room; heights are measured from it
  repeat       the distance along the roll after which the design recurs; it
               begins at a mark of your choice, the same on every roll
  motif        the leading figure of the design, as the job describes it
  match        how the next drop must stand against this one: free, straight, or
               offset by a part of the repeat, such as a half drop
  kill seam    the last seam of a room papered all round, where the design
               cannot meet; it is put where it shows least
  allowance    the surplus at head and foot, to trim on the wall
  batch        rolls printed in one run; never mix batches on one wall
  finding      something to know about a plan: serious, a caution, or a note
  A|B          the corner between walls A and B, seen from inside the room
  run          walls hung one after the other with one paper`},
	{"opened", "When rolls have come and been opened", `Before an order nobody knows where in the design a roll begins or how long it
is. The plan holds whatever comes. Once the rolls are there, it can be cut from
these very rolls, often with one less:

  1. Write a name on every roll, and compare the batches on the labels.
  2. Unroll each one and look at it: flaws, joins, its true length.
  3. Measure from its beginning to the first place where the design begins: the
     mark of your choice, the same on every roll, that the job counts from.
  4. firstdrop open room.yaml --roll A1 --length 10.03m --begins 212mm
     writes it into the job. Add --flaw 3.2m-3.35m for each flaw, --part for
     separate lengths, and --batch where it is not the label's. The rest of the
     file stays as it is.
  5. firstdrop plan room.yaml tells what is still to buy, firstdrop rolls
     room.yaml draws every roll with its cuts.

Batches never mix on one wall: where rolls of two are used, the change falls
into an inside corner. For goods that shade, in_order: true at the paper has the
pieces cut strictly in hanging order. In a cut that gives narrow pieces side by
side, cut right across the paper first, then slit; mind the blade.`},
	{"safety", "The usual cautions", `The usual cautions of the work. Local codes and licensed trades come first.

Electricity: switch off at the board and check that it is dead before a plate
is loosened or paper is cut round it. Metallic papers can carry current: they
end at the plate's edge and never go behind it.

Heights: on stairs and above 3 m work from a platform that is made for it, not
from a ladder; two people for long drops.

Blades: change them often, cut away from the hand, put used ones into a box.

Old houses: old paint may hold lead, and old textured coatings asbestos. Have
them tested before sanding, scraping or drilling, and leave asbestos to those
who are licensed for it.

Mould: find and stop the damp first. Large areas are work for a specialist.`},
}
