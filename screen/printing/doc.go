// Package printing answers the question: how does the screen read and print?
//
// It is the counterpart of package screen for what is too large for live planning:
// job files of people, the sheets for the wall as PDF, the workbook of the lists
// and drawings of walls. Everything is made by the code that the command line
// makes it with. A request and its answer are JSON; a file comes in base64.
package printing
