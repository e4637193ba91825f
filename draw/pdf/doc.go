// Package pdf answers the question: what does a document of scenes look like as
// PDF?
//
// Every page is one scene, at its true size: a millimetre of the scene is one of
// paper. The file follows PDF 1.7 (ISO 32000-1; the numbers of sections in this
// package are its). Its text can be searched and copied in the order of reading
// whatever the script, its fonts are embedded with only the letters that are used,
// its pages are tagged for those who have them read aloud, and printing programs
// are asked not to change the scale. The same document gives the same bytes: the
// file tells no time.
package pdf
