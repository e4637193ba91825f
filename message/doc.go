// Package message holds what people must be told before it is said in any language:
// a code, and what it is about.
//
// [New] makes a [Message] where something is found to be wrong; package words says
// it. A Message is an error too, and then speaks plain English to programmers.
package message
