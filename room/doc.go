// Package room answers the question: what is to be covered?
//
// A [Wall] is a plane polygon with openings; neighbouring walls share a
// [Corner]. A [Run] is the stretch of consecutive walls to be papered, in the
// order in which one meets them turning to the right inside the room. Every
// height is measured from one level line round the room, the datum.
package room
