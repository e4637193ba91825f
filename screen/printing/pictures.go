package printing

import (
	"fmt"

	"firstdrop/draw"
	"firstdrop/draw/design"
	"firstdrop/draw/picture"
	"firstdrop/job"
	"firstdrop/message"
	"firstdrop/paper"
	"firstdrop/plan"
)

// designSharp is how many squares a demo design is across: sharp at 1:10.
const designSharp = 480

// repeats returns the pictures of the papers of a plan; nil for one without, and
// for one whose picture did not come along.
func (p *printer) repeats(j *job.Job, made *plan.Plan) ([]*draw.Picture, error) {
	all := make([]*draw.Picture, len(made.Task.Papers))
	for i := range all {
		name := j.Papers[i].Picture
		shown, err := p.picture(name, &made.Task.Papers[i])
		if err != nil {
			return nil, message.New("quoted", "{text}: {why}", "text", fmt.Sprintf("papers[%d].picture", i), "why", message.Of(err)).Because(err)
		}
		all[i] = shown
	}
	return all, nil
}

// picture returns the demo design of a name, or the picture that came along.
func (p *printer) picture(name string, label *paper.Paper) (*draw.Picture, error) {
	if d, ok := design.Named(name); ok {
		repeat := label.Repeat
		if repeat <= 0 {
			repeat = d.Repeat.Scaled(int64(label.Width), int64(d.Width))
		}
		return d.Picture(label.Width, repeat, designSharp)
	}
	for _, own := range p.request.Pictures {
		if name != "" && own.Name == name {
			return picture.Decode(own.Data)
		}
	}
	return nil, nil
}
