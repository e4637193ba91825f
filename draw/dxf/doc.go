// Package dxf answers the question: what does a scene look like to a drafting
// program?
//
// It writes DXF as AutoCAD release 12 reads it (AC1009), which every program that
// reads DXF at all does: lines, polylines and text, in millimetres of the wall
// itself, whatever scale the scene is drawn at, on one layer for each of the
// scene's. Pictures of the paper, and what fills areas, are left out: their edges
// are drawn. The letters are those of the reader's program, at the height that our
// capitals have.
package dxf
