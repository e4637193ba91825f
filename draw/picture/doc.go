// Package picture answers the question: what does a file of the user's show?
//
// It reads PNG, JPEG and the first frame of GIF, whatever their kind of colour, and
// SVG drawings of a safe kind, into a [draw.Picture], with limits that keep a hostile or broken file from taking the
// machine's memory. Colours are taken as sRGB: profiles are not applied. A camera's
// note of how it was held (Exif) is.
package picture
