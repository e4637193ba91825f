// Package screen answers the question: what is on the screen?
//
// A screen asks with a [Request] and is told with an [Answer]. Both are JSON, so
// that one [Planner] serves a worker in the browser (as WebAssembly), and tests
// on the machine, alike. What comes back is ready to be drawn: sizes in
// millimetres along the unrolled room for the pencil, and the same in words for
// the eye. The screen decides nothing: it draws what it is told, and sends the
// job with the user's change back.
//
//	screen (TypeScript)                        planner (Go)
//	job document ──► Request{kind, version, job} ──► job, plan, audit
//	drawing      ◄── Answer{version, plan, …}    ◄── tell, order
//
// Numbers in answers are for drawing only: they are rounded to floating point,
// and never go back into a job. Every text is in the words and units of the
// request. Positions along a run count from its left end, unrolled; heights from
// the datum, upwards.
package screen
