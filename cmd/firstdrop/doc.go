// Command firstdrop plans hanging wallpaper exactly.
//
// Firstdrop plans hanging wallpaper: where the first plumb line goes, where every
// drop stands, how long each piece is cut and from which roll, how many rolls are
// needed, and why fewer are impossible.
//
// A room and the labels of its papers are written down in a job, a text file that
// "firstdrop begin" starts and explains. JOB is the name of such a file (YAML or
// JSON), or - for standard input.
//
// For example:
//
//	firstdrop begin room.yaml           start a job and fill in what you measure
//	firstdrop check room.yaml           is everything there, does the room close?
//	firstdrop plan room.yaml            what to buy, and where to begin
//	firstdrop plan room.yaml --folder hanging
//	                                    cutting list and a drawing of every wall
//
// # Write a job to start from, with every line explained
//
//	firstdrop begin [FILE] [flags]
//
// Begin writes a small job, invented but complete, with comments on what has to be
// changed, and says what to measure next. Without FILE it writes room.yaml;
// - prints the job instead.
//
// For example:
//
//	firstdrop begin
//	firstdrop begin bedroom.yaml --units imperial
//
// Flags:
//
//	--replace        replace the file if there is one
//	--units system   metric or imperial (metric, if not given)
//
// # Tell how sure the number of rolls is
//
//	firstdrop certainty JOB [flags]
//
// Certainty simulates the job many times as it may turn out: rolls longer or
// shorter within what the label allows, begun at any point of the design, heights
// measured a little wrong, a piece spoiled now and then. It tells in how many of
// those jobs the planned number of rolls is enough, and one less, and one more.
// The same job, number and seed give the same answer on every machine.
//
// For example:
//
//	firstdrop certainty room.yaml
//	firstdrop certainty room.yaml --jobs 100000 --seed 7
//
// Flags:
//
//	--jobs int       how many jobs to simulate (default 10000)
//	--json           print the curves as JSON
//	--seed uint      another seed, other jobs (default 1)
//	--units system   metric or imperial (the job's, if not given)
//
// # Read and check jobs without planning
//
//	firstdrop check JOB... [flags]
//
// Check reads jobs and says of each that it is sound, or what is wrong with it:
// the line, the fault, and what would be right. It also holds the survey against
// itself: whether the walls close, heights fit each other, and sizes are likely.
// What is possible but odd is asked about, and does not make a job unsound.
//
// For example:
//
//	firstdrop check room.yaml
//	firstdrop check *.yaml --quiet
//
// Flags:
//
//	-q, --quiet          print errors only
//	    --units system   metric or imperial (the job's, if not given)
//
// # Tell which millimetres the number of rolls hangs on
//
//	firstdrop cliffs JOB [flags]
//
// Cliffs finds the smallest change of the walls' height, of an allowance, of the
// repeat or of the rolls' length at which the job takes a roll more or less, to
// the millimetre, nearest first. The drops stay where they are.
//
// For example:
//
//	firstdrop cliffs room.yaml
//	firstdrop cliffs room.yaml --json
//
// Flags:
//
//	--json           print the cliffs as JSON, lengths in millimetres
//	--units system   metric or imperial (the job's, if not given)
//
// # Print a job in the other notation
//
//	firstdrop convert JOB (--json | --yaml) [flags]
//
// Convert prints a job as JSON, for programs, or as YAML, for people. Every length
// stays exact and gets its unit. Comments are not carried over, and neither is the
// way a length was written: 250.2 cm becomes 2502 mm.
//
// For example:
//
//	firstdrop convert room.yaml --json > room.json
//	firstdrop convert room.json --yaml
//
// Flags:
//
//	--json   print JSON
//	--yaml   print YAML
//
// # List everything to know about a job's plan
//
//	firstdrop findings JOB [flags]
//
// Findings plans a job and lists what people must know of it, gravest first: what
// looks wrong on the wall or costs paper (serious), what to look at before cutting
// (caution), and what is good to know (note), each with its place and its size.
//
// For example:
//
//	firstdrop findings room.yaml
//	firstdrop findings room.yaml --json
//
// Flags:
//
//	--json           print the findings as JSON, lengths in millimetres
//	--units system   metric or imperial (the job's, if not given)
//
// # Plan a job: what to buy, where to begin, what to watch for
//
//	firstdrop plan JOB [flags]
//
// Plan finds where the first plumb line goes, where every drop stands, how each
// piece is cut and from which roll, and the fewest rolls that do. It prints what
// one wants to know first. Every plan is worked out a second time by another road
// before it is shown; one that does not pass is neither shown nor saved.
//
// With --folder it also writes plan.json, the cutting list in hanging order, the
// map of the rolls, and a drawing of every wall. Files are replaced only if the
// program wrote them and nobody has changed them since: written.sha256 in the
// folder lists them, and sha256sum can check it.
//
// For example:
//
//	firstdrop plan room.yaml
//	firstdrop plan room.yaml --folder hanging --units imperial
//	firstdrop plan room.yaml --json | jq .summary.papers
//	firstdrop plan - < room.yaml
//
// Flags:
//
//	    --folder folder   also write the plan's files into this folder
//	    --json            print the plan document as JSON and nothing else
//	-q, --quiet           print errors only
//	    --replace         replace files that are not the program's
//	    --units system    metric or imperial (the job's, if not given)
//
// # Print the JSON Schema of job files
//
//	firstdrop schema
//
// Schema prints the JSON Schema that describes job files, YAML and JSON alike.
// Editors that know it complete keys and mark mistakes while one writes.
//
// For example:
//
//	firstdrop schema > job.schema.json
//
// # Print the version of the program and of its formats
//
//	firstdrop version
//
// Version prints the version of the program, of the job files that it reads, and
// of the plan documents that it writes.
//
// For example:
//
//	firstdrop version
//
// # What the exit codes mean
//
//	firstdrop help exit-codes
//
//	0    done
//	1    the job has errors, or asks for what cannot be hung: nothing was planned
//	2    the command, a flag or an argument is wrong
//	3    a file could not be read, or must not be written over
//	70   a fault of the program, such as a plan that fails its own audit: nothing
//	     was shown and nothing was written
//	130  interrupted; no file is left half written
//
// Findings, even serious ones, are no errors: the code stays 0.
//
// # The usual cautions
//
//	firstdrop help safety
//
// The usual cautions of the work. Local codes and licensed trades come first.
//
// Electricity: switch off at the board and check that it is dead before a plate
// is loosened or paper is cut round it. Metallic papers can carry current: they
// end at the plate's edge and never go behind it.
//
// Heights: on stairs and above 3 m work from a platform that is made for it, not
// from a ladder; two people for long drops.
//
// Blades: change them often, cut away from the hand, put used ones into a box.
//
// Old houses: old paint may hold lead, and old textured coatings asbestos. Have
// them tested before sanding, scraping or drilling, and leave asbestos to those
// who are licensed for it.
//
// Mould: find and stop the damp first. Large areas are work for a specialist.
//
// # What the words mean
//
//	firstdrop help words
//
//	drop         one vertical length of paper as hung (a strip)
//	piece        a part of a drop cut as one length; over a door it is a short one
//	seam         the line where two neighbouring drops meet
//	head, foot   upper and lower end of a drop, a wall or an opening
//	plumb line   the vertical pencil line that a drop is set to
//	datum        a level line round the room; heights are measured from it
//	repeat       the distance along the roll after which the design recurs; it
//	             begins at a mark of your choice, the same on every roll
//	motif        the leading figure of the design, as the job describes it
//	match        how the next drop must stand against this one: free, straight, or
//	             offset by a part of the repeat, such as a half drop
//	kill seam    the last seam of a room papered all round, where the design
//	             cannot meet; it is put where it shows least
//	allowance    the surplus at head and foot, to trim on the wall
//	batch        rolls printed in one run; never mix batches on one wall
//	finding      something to know about a plan: serious, a caution, or a note
//	A|B          the corner between walls A and B, seen from inside the room
//	run          walls hung one after the other with one paper
package main
