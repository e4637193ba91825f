// Package room answers the question: what is to be covered?
//
// A [Wall] is a plane polygon with openings; neighbouring walls share a
// [Corner]. A [Run] is the stretch of consecutive walls to be papered, in the
// order in which one meets them turning to the right inside the room. Every
// height is measured from one level line round the room, the datum.
//
// What was measured is looked at before it is used. [Run.Check] names what
// cannot be right, with the measurement to take again; [Run.Findings] asks
// about what is unlikely; and a [Survey] tells how far a closed plan is from
// closing, and which measurement most likely is to blame. A survey advises: it
// computes in floats, and changes nothing that is cut.
//
// [Run.Face] is where planning begins: a wall as it really stands, with leaning
// edges and without its openings.
package room
