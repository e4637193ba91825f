// Package store answers the question: where are jobs kept, and what became of
// them?
//
// A job is kept as its document, whole, together with every version that it ever
// had. A version is made by a save and never changed. Whoever saves names the
// version that the change was made on; when the job has moved on since, nothing
// is written and the saver is handed what stands there now. So two devices never
// overwrite each other, and neither of them has to wait for the other.
//
//	device   begin ──► 1 ──► 2 ──► 3 ─ ─ (no network) ─ ─► 4 5 6
//	                                                        │ Push(base 3, [4 5 6])
//	store    ·········  1     2     3  ────────────────────►4 5 6   all or none
//
// A [Store] is one implementation; package storetest holds the suite that each
// must pass. Documents are JSON objects. A store does not read them, apart from
// the name, so that a job can be saved that is half measured and not sound yet.
package store

import (
	"context"
	"time"
)

// Limits of what is kept.
const (
	MostBytes     = 2 << 20  // of one document
	MostRevisions = 1000     // of one push
	MostWords     = 200      // characters of a name or label
	MostPictures  = 64       // of one job
	MostPicture   = 16 << 20 // bytes of one picture
	MostTicks     = 10_000   // of one job
	MostKey       = 4000     // bytes of a tick's key
)

// Store keeps jobs. Several may use it at once. Every error that a caller can do
// something about is an [*Error]; each method lists the codes that it returns.
type Store interface {
	// List tells of all jobs that are not in the bin, the last changed first.
	List(ctx context.Context) ([]Summary, error)
	// Bin tells of all jobs that are in the bin, the last thrown away first.
	Bin(ctx context.Context) ([]Summary, error)
	// Erased tells which jobs were here and are erased, by their ids: so that a device
	// that still holds one can tell a job that was deleted from one never heard of.
	Erased(ctx context.Context) ([]ID, error)
	// Get returns a job as it stands, also one in the bin. [NotFound].
	Get(ctx context.Context, id ID) (*Job, error)

	// Push adds revisions, in their order, as the next versions of the job: all or
	// none. base is the version they were made on; 0 begins a job. It returns the
	// last of them once it would survive a loss of power.
	//
	// When the job has another version than base, it returns [Conflict] with the job
	// as it stands. Revisions with a key that are there already, right behind base,
	// are not added again: what was sent twice, because the answer was lost on its
	// way, counts once.
	//
	// A push takes the job out of the bin: somebody still works on it. A job that
	// was erased and is begun again goes on counting where it ended.
	// [NotFound], [Conflict], [TooLarge], [Invalid], [Full].
	Push(ctx context.Context, id ID, base int64, revisions []Revision) (Summary, error)

	// History tells of the versions below one, at most so many, the newest first;
	// below 0: from the newest on. [NotFound].
	History(ctx context.Context, id ID, below int64, most int) ([]Version, error)
	// Version returns the job as it stood. [NotFound].
	Version(ctx context.Context, id ID, version int64) (*Job, error)
	// NameVersion gives a version a name, or takes it away with "". [NotFound],
	// [Invalid].
	NameVersion(ctx context.Context, id ID, version int64, name string) error

	// Discard moves a job into the bin, where it may lie already. [NotFound].
	Discard(ctx context.Context, id ID) error
	// Recover takes a job out of the bin, if it is there. [NotFound].
	Recover(ctx context.Context, id ID) error
	// Erase removes a job that is in the bin, its history, pictures and ticks for good.
	// [NotFound] also for a job that is not in the bin.
	Erase(ctx context.Context, id ID) error

	// AddPicture keeps a picture of a job; one that is there already counts once.
	// [NotFound], [TooLarge], [Full].
	AddPicture(ctx context.Context, id ID, p Picture) error
	// Pictures tells of the pictures of a job, without their bytes, the oldest first.
	// [NotFound].
	Pictures(ctx context.Context, id ID) ([]Picture, error)
	// Picture returns one of them. [NotFound].
	Picture(ctx context.Context, id ID, name string) (*Picture, error)

	// Tick sets ticks of a job, or takes them away, and returns all that there are, those
	// taken away too, by their keys. Of the same tick the greater turn counts, and of two of
	// one turn the one that is set. Without any it only tells.
	// [NotFound], [Invalid], [TooLarge], [Full].
	Tick(ctx context.Context, id ID, ticks []Tick) ([]Tick, error)

	// Ping reports whether the store can be read.
	Ping(ctx context.Context) error
	// Close ends the store once what is being written is written.
	Close() error
}

// Summary tells of a job without its document.
type Summary struct {
	ID      ID
	Name    string // as its document says
	Version int64  // counts every save, from 1
	Label   string // what the last save changed
	Size    int    // of the document in bytes
	Begun   time.Time
	Saved   time.Time
	Binned  time.Time // when it was thrown away; zero: it was not
}

// Job is a job at one of its versions.
type Job struct {
	Summary
	Document []byte
}

// Version tells of one version of a job.
type Version struct {
	Version int64
	Job     string    // the job's name at that time
	Label   string    // what the save changed, in words: "window moved"
	Name    string    // given by the user; empty: none
	Made    time.Time // by the clock of whoever made the change
	Saved   time.Time // by the store's
	Size    int
}

// Revision is one change of a job: the whole document as it then is.
type Revision struct {
	// Key is chosen by whoever makes the revision, so that it counts once however
	// often it is sent. Empty: it counts as often as it is sent.
	Key      ID
	Document []byte
	Label    string
	Made     time.Time // zero: when it is saved
}

// Picture is a picture of a job.
type Picture struct {
	Name          string // a SHA-256 in hexadecimal, of the file as it came, and the ending of its kind
	Type          string // its media type
	Width, Height int    // in squares
	Size          int    // of Bytes
	Bytes         []byte
}

// Tick is a mark beside a line of one of a job's lists: that something is cut, or hangs.
// It is kept beside the document, since how far somebody has come changes no plan.
type Tick struct {
	Key string // what it stands beside, as a device names it
	On  bool   // false: it was taken away
	// Turn orders what was said of one tick, without trusting clocks: from 1, and always above
	// the greatest that whoever said it had seen. Of what two say without having heard of
	// each other, it tells no order that is true, but the same one everywhere.
	Turn int64
}
