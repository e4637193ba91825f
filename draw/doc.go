// Package draw answers the question: what does a page hold?
//
// A [Scene] is a vector drawing in exact lengths on paper: areas with holes,
// lines, text, hatching, dimension lines, in named layers. It knows no pixels
// and no file format. Each writer in a folder below turns the same scene into
// one format; a writer needs to know four kinds of item ([Area], [Line], [Text],
// [Group]), for every other kind says what it is made of ([Compound]).
//
// # Axes
//
// X runs to the right and y upwards, as on a wall. Where the origin lies is the
// scene's choice: [Scene.Window] says which stretch of the plane is the page. A
// drawing at scale 1:n puts its origin where the wall has its own, so that a
// point of the wall is found at its own coordinates divided by n.
package draw
