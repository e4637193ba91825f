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
// # Offer other good plans, with what each costs and saves
//
//	firstdrop alternatives JOB [flags]
//
// Alternatives offers up to five plans that differ: the kill seam is elsewhere,
// or the seams have moved. None is beaten by another in rolls, in handling and in
// looks alike, and each tells what it costs and saves against the first, the best
// on the whole. Where fewer than three are left, some are shown that another
// beats, and said to be; where the walls leave no other layout, the best stands
// alone.
//
// With --take N the job is printed with plan N as its choice: where the first drop
// stands and where the room closes. Save it as a new file to keep both.
//
// For example:
//
//	firstdrop alternatives room.yaml
//	firstdrop alternatives room.yaml --take 2 > room-2.yaml
//
// Flags:
//
//	--json           print the alternatives as JSON, lengths in millimetres
//	--take N         print the job with plan N as its choice
//	--units system   metric or imperial (the job's, if not given)
//
// # Copy all jobs of the server into one file
//
//	firstdrop backup FILE [flags]
//
// Backup writes all jobs with their history and pictures into one file, as they
// are at this moment. The server may run meanwhile. The file appears under its
// name when it is whole, checked and on the disk. Keep it elsewhere than on this
// machine.
//
// For example:
//
//	firstdrop backup jobs-2026-05-01.db
//
// Flags:
//
//	--data folder   the folder that the jobs are kept in (the user's, if not given)
//	--replace       replace the file if there is one
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
//	firstdrop findings room.yaml --all
//	firstdrop findings room.yaml --json
//
// Flags:
//
//	--all            list each of those alike, where there are more than three
//	--json           print the findings as JSON, lengths in millimetres
//	--units system   metric or imperial (the job's, if not given)
//
// # Write a roll that has been opened into the job
//
//	firstdrop open JOB --roll NAME --length LENGTH [flags]
//
// Open writes into the job what one finds on opening a roll: its true length, how
// far from its beginning the design first begins, flaws, separate lengths, and its
// batch. From then on the plan cuts this very roll. Every other line of a YAML job
// stays as it is, with its comments. Write the name on the roll, too.
//
// For example:
//
//	firstdrop open room.yaml --roll A1 --length 10.03m --begins 212mm --batch 17
//	firstdrop open room.yaml --paper Ferns --roll A2 --length 9m --flaw 3.2m-3.35m
//	firstdrop open room.yaml --roll 3 --part 6.1m@120mm --part 3.9m@40mm
//
// Flags:
//
//	--batch string           its batch, if not the label's
//	--begins string          from its beginning to where the design first begins
//	--flaw FROM-TO           a stretch not to be used, FROM-TO; as often as needed
//	--length string          how much of it can be used
//	--paper string           which paper, if the job has several
//	--part LENGTH[@BEGINS]   a separate length, LENGTH[@BEGINS], instead of --length
//	--replace                replace a roll of that name
//	--roll string            what is written on the roll
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
// With --folder it also writes plan.json, the cutting list in hanging order (or
// with --as-cut roll by roll), the map of the rolls, and a drawing of every wall.
// Files are replaced only if the program wrote them and nobody has changed them
// since: written.sha256 in the folder lists them, and sha256sum can check it.
// --formats adds the lists as a workbook (lists.xlsx) and drawings for drafting
// programs (dxf). CSV files have commas between and decimal points in every
// language, for programs (RFC 4180); a spreadsheet program shows the workbook's
// numbers in the reader's own notation.
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
//	    --as-cut          list the cuts roll by roll, not in hanging order
//	    --folder folder   also write the plan's files into this folder
//	    --formats list    some of csv,xlsx,svg,dxf (default csv,svg)
//	    --json            print the plan document as JSON and nothing else
//	-q, --quiet           print errors only
//	    --replace         replace files that are not the program's
//	    --units system    metric or imperial (the job's, if not given)
//
// # Print the sheets that are taken to the wall
//
//	firstdrop print JOB [SHEETS...] --to FOLDER|FILE.pdf [flags]
//
// Print writes the sheets that are taken to the wall, as PDF at true scale: all in
// one file, where --to ends in .pdf, or a file for each in a folder.
//
//	survey   what to measure in this room, and where, with boxes to write in
//	order    what to buy in packs, why so many, and how sure that is
//	hanging  floor key, the unrolled room, an elevation of every wall
//	cutting  the cutting list, as one cuts and as one hangs
//	rolls    every cut of every roll to scale
//	labels   to stick on the drops
//	steps    the work in its order, drop by drop, with the cautions
//	record   what hangs where, what is left and what it can patch
//
// All are printed unless some are named. Each page has a ruler that shows whether
// the printer kept the scale. With --blank and no job it is a survey sheet for a
// room that nobody has measured yet.
//
// No file is replaced unless the program wrote it into the folder and nobody has
// changed it since, or --replace is given.
//
// For example:
//
//	firstdrop print room.yaml --to sheets
//	firstdrop print room.yaml hanging --to room.pdf --paper-size A3 --scale 1:20
//	firstdrop print room.yaml labels --to labels.pdf --labels 3x7
//	firstdrop print --blank --to survey.pdf
//
// Flags:
//
//	    --blank              a survey sheet for a room not measured yet
//	    --labels grid        grid of labels: plain, 3x8, 3x7 (A4) or 3x10 (letter) (default "plain")
//	    --paper-size paper   A4, A3, letter or tabloid paper (that of the language, letter for inches)
//	-q, --quiet              print errors only
//	    --replace            replace files that are not the program's
//	    --scale 1:n          1:n for elevations (for each wall the largest that fits)
//	    --to folder          the folder or .pdf file to write
//	    --units system       metric or imperial (the job's, if not given)
//
// # Bring back the jobs of a backup
//
//	firstdrop restore FILE [flags]
//
// Restore brings back the jobs of a backup. The server may run meanwhile, and
// nothing is lost: a job that is otherwise now gets a new version and keeps its
// history, and jobs that were begun since stay.
//
// For example:
//
//	firstdrop restore jobs-2026-05-01.db
//
// Flags:
//
//	--data folder   the folder that the jobs are kept in (the user's, if not given)
//
// # Draw every roll with its cuts
//
//	firstdrop rolls JOB [flags]
//
// Rolls draws every roll to scale, from its beginning on the left: the pieces it
// gives, what runs by until the design comes right, flaws, and what is left over.
// Rolls in hand go by what is written on them.
//
// For example:
//
//	firstdrop rolls room.yaml
//	firstdrop rolls room.yaml --json
//
// Flags:
//
//	--json           print the rolls as JSON, written as in the plan document
//	--units system   metric or imperial (the job's, if not given)
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
// # Serve the jobs to the browser and to other programs
//
//	firstdrop serve [flags]
//
// Serve keeps jobs in a data folder and offers them to the browser, and to other
// programs under /api (docs/api.md; /api/openapi.json describes every operation).
// It prints its address, logs to standard error, and stops when it is interrupted,
// once what it is saving is saved.
//
// It listens on this machine alone. With another --address others reach it too:
// there are no accounts, and whoever has the link that is printed can see and
// change all jobs. Phones work without a network only if they have come by HTTPS:
// give a certificate that they trust with --cert and --key.
//
// For example:
//
//	firstdrop serve
//	firstdrop serve --data /srv/firstdrop --log json
//	firstdrop serve --address :8443 --allow-host van.example --cert c.pem \
//	  --key k.pem
//
// Flags:
//
//	--address host:port   listen at this host:port; port 0 takes a free one (default "127.0.0.1:8417")
//	--allow-host name     answer to this name too; as often as needed
//	--cert file           a file with the certificate for HTTPS, in PEM
//	--data folder         the folder that the jobs are kept in (the user's, if not given)
//	--key file            a file with its key, in PEM
//	--log text            how the log is written: text or json (default "text")
//	--open                also open the address in the browser
//	--token-file file     a file with the token for others (one is made in the data folder)
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
// # Say why the plan is as it is, or why not another way
//
//	firstdrop why JOB [flags]
//
// Why lists what the plan's layout was judged by: each finding with its weight in
// thousandths of a roll, and how the room closes. With --start or --kill it
// plans the job once more as you propose, and says what that would cost and save.
//
// A start is a wall and where the first drop's left edge stands on it, or "beside"
// an opening: its right edge. A kill seam is a corner, an opening, or a wall and
// where on it. The rules and their weights: firstdrop help rules.
//
// For example:
//
//	firstdrop why room.yaml
//	firstdrop why room.yaml --start "wall D 1200 mm"
//	firstdrop why room.yaml --start "beside window" --kill "corner B|C"
//	firstdrop why room.yaml --kill "over door"
//
// Flags:
//
//	--json           print the answer as JSON, lengths in millimetres
//	--kill here      close here instead
//	--run run        of which run of the job, by its place in hang (default 1)
//	--start here     begin here instead
//	--units system   metric or imperial (the job's, if not given)
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
// # When rolls have come and been opened
//
//	firstdrop help opened
//
// Before an order nobody knows where in the design a roll begins or how long it
// is. The plan holds whatever comes. Once the rolls are there, it can be cut from
// these very rolls, often with one less:
//
//  1. Write a name on every roll, and compare the batches on the labels.
//  2. Unroll each one and look at it: flaws, joins, its true length.
//  3. Measure from its beginning to the first place where the design begins: the
//     mark of your choice, the same on every roll, that the job counts from.
//  4. firstdrop open room.yaml --roll A1 --length 10.03m --begins 212mm
//     writes it into the job. Add --flaw 3.2m-3.35m for each flaw, --part for
//     separate lengths, and --batch where it is not the label's. The rest of the
//     file stays as it is.
//  5. firstdrop plan room.yaml tells what is still to buy, firstdrop rolls
//     room.yaml draws every roll with its cuts.
//
// Batches never mix on one wall: where rolls of two are used, the change falls
// into an inside corner. For goods that shade, in_order: true at the paper has the
// pieces cut strictly in hanging order. In a cut that gives narrow pieces side by
// side, cut right across the paper first, then slit; mind the blade.
//
// # What layouts are judged by, and what it weighs
//
//	firstdrop help rules
//
// Every rule is a finding with a weight in thousandths of a roll. Change one in
// the job: "weights: {sliver: 600}". 0 turns a rule off; nothing is forbidden.
//
//	sliver            sliver: 400, at no width; a third at the limit
//	    no strip narrower than min_sliver at a corner or an end (Wallcoverings
//	    Association, on engineering a room: no last strip that is a sliver; the
//	    figure is common practice)
//	sliver beside     sliver_beside: 150, at no width; a third at the limit
//	    no strip narrower than min_sliver between a seam and an opening
//	    (Wallcoverings Association, on engineering a room; the figure is common
//	    practice)
//	header overrun    overrun: 40, each
//	    no drop over an opening that runs past its edge by less than overrun, and
//	    so is cut as a full drop (published advice of practising paperhangers
//	    (cases of 4 and 5 in))
//	seam near edge    seam_near: 300, on the edge; a third at the limit
//	    no seam within seam_clearance of an opening's edge (Wallcoverings
//	    Association, on engineering a room: 2 in)
//	seam near fold    seam_near: 300, on the edge; a third at the limit
//	    no seam within seam_clearance of an outside corner (Wallcoverings
//	    Association, on engineering a room: 2 in; decorators' advice: 50 mm)
//	focal seam        focal_seam: 60, each
//	    no seam down the middle of a focal wall (common practice)
//	lining seam       lining_seam: 120, on the seam; a third at 25 mm
//	    no seam over a seam of the lining paper, and none of a lining under one
//	    (published advice on lining: begin with half a width where seams would
//	    coincide; the figure is common practice)
//	seam on fitting   seam_fitting: 20, each
//	    no seam across a socket, switch, light, bracket or vent (common practice)
//	end in fold       end_in_fold: 150, each
//	    no drop that ends exactly in an inside corner, with nothing to turn it
//	    (common practice)
//	renewed miss      renew_metre: 150, a metre in plain sight that misses by 20
//	                  mm or more
//	    no new drop in a corner where the design then misses (published advice of
//	    practising paperhangers: match in the corners)
//	wedge             wedge: 2, a millimetre between the least and the most it
//	                  misses
//	    no wedge in a leaning corner (published advice of practising paperhangers:
//	    hide wedges in corners)
//	corner loss       weighs nothing
//	    what a wrap takes of the design in a corner is said (published advice of
//	    practising paperhangers: a wrap of 1/16 to 1 in)
//	lap shadow        lap_shadow: 10, each
//	    no lap in a corner that turns its edge away from the nearest window (older
//	    handbooks: work away from the daylight)
//	kill misfit       kill_metre: 150, a metre in plain sight, below eye level,
//	                  that misses by 20 mm or more
//	    the kill seam is short, misses little, and stands where it is seen least
//	    (Wallcoverings Association, on engineering a room: choose the mismatch
//	    first, on a short length)
//	kill meets        weighs nothing
//	    a room that closes by itself is said (common practice)
//	off centre        off_centre: 120, at the most it can be off, a quarter of a
//	                  width
//	    the leading motif, or the middle between two, stands on the centre of a
//	    focal wall or on the stated line (published advice of practising
//	    paperhangers: centre the motif, not the sheet)
//	unequal ends      unequal_ends: 100, for a difference of one width
//	    the two end strips of a focal wall are equally wide (published advice of
//	    practising paperhangers: seam or strip in the centre, whichever gives
//	    balanced, wide ends)
//	drift             drift: 6, a millimetre over the wall; an eighth for other
//	                  lines, nothing where none are stated
//	    rows of the design keep to the ceiling, where the label says level lines
//	    (published advice of practising paperhangers: geometrics parallel to the
//	    ceiling, even if not plumb; NHBC Standards 2020, 9.1.3: 3 mm per metre is
//	    to be expected)
//	off plumb         off_plumb: 3, a millimetre over the wall's height; a quarter
//	                  of it where the label says lines, an eighth for loose
//	                  designs, nothing where none are stated
//	    edges hang plumb (Wallcoverings Association: every wall gets its own plumb
//	    line; the figure is common practice)
//	off casing        off_casing: 8, a millimetre over the wall's height; a
//	                  quarter for level lines, an eighth for loose ones, nothing
//	                  where none are stated
//	    edges keep to the casings beside them, where the label says upright lines
//	    (published advice of practising paperhangers: for stripes, parallel to the
//	    nearest casing matters more than plumb)
//	corner step       corner_step: 3, a millimetre
//	    the design does not step up or down in a corner (published advice of
//	    practising paperhangers: match in the corners, let ceiling and floor
//	    drift)
//	mixed ways        mixed_ways: 20, each inside corner
//	    walls that are seen together are set in one way (published advice of
//	    practising paperhangers: one way within one sight line)
//	motif cut         motif_cut: 100, each drop
//	    no leading motif cut by the ceiling (Wallcoverings Association, on
//	    engineering a room: do not cut a motif in half at the ceiling line)
//	motif cut low     motif_cut_low: 15, each
//	    no leading motif cut by a rail, a sill or an opening's head (Wallcoverings
//	    Association, on engineering a room: nor at chair rail, door and window
//	    heads)
//	awkward           awkward: 15, each
//	    no piece longer than long_piece, none with openings cut out of both its
//	    sides (common practice)
//
// Beside these: roll 1000, drop 12, piece 4, batch_change 500. Where no figure is
// published, "common practice" says so.
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
