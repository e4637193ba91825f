package store

import (
	"errors"
	"fmt"
)

// Code says what kind of trouble there is.
type Code string

// The codes. Whatever else goes wrong is the store's own trouble, and nothing
// that another call could do better.
const (
	NotFound Code = "not_found"        // there is no such job, version or picture
	Conflict Code = "version_conflict" // the job is at another version
	TooLarge Code = "too_large"        // more than the store takes
	Invalid  Code = "invalid"          // not of the form that the store keeps
	Full     Code = "full"             // there is no room left on the disk
)

// Error is trouble that a caller can do something about.
type Error struct {
	Code    Code
	Message string // what was asked, and what to do
	Current *Job   // of a [Conflict]: the job as it stands
}

func (e *Error) Error() string { return "store: " + e.Message }

// CodeOf returns the code of an error; "" for one that has none.
func CodeOf(err error) Code {
	var e *Error
	if errors.As(err, &e) {
		return e.Code
	}
	return ""
}

// Missing returns the error for a job that is not there.
func Missing(id ID) error {
	return &Error{Code: NotFound, Message: fmt.Sprintf("there is no job %s", id)}
}

// MissingVersion returns the error for a version that is not there.
func MissingVersion(id ID, version int64) error {
	return &Error{Code: NotFound, Message: fmt.Sprintf("job %s has no version %d", id, version)}
}

// MissingPicture returns the error for a picture that is not there.
func MissingPicture(id ID, name string) error {
	return &Error{Code: NotFound, Message: fmt.Sprintf("job %s has no picture %q", id, name)}
}

// Moved returns the error for a push on a version that the job no longer has.
func Moved(base int64, current *Job) error {
	return &Error{
		Code: Conflict, Current: current,
		Message: fmt.Sprintf("the change was made on version %d, and the job is at version %d; nothing was saved", base, current.Version),
	}
}
