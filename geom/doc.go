// Package geom answers the question: where on the wall?
//
// Points are exact lengths: x runs to the right as one faces the wall from
// inside the room, y upwards from the datum. The package knows neither rooms
// nor paper.
package geom
