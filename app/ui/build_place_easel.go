package ui

import (
	"image"
	"slices"
	"sync"
)

// easel draws pictures off the window's goroutine, one at a time and the one asked for last first, and
// keeps the newest of them. Its methods are for the window's goroutine.
type easel struct {
	post  func(func())
	keep  int // how many pictures
	done  map[string]image.Image
	order []string        // of what is done, the oldest first
	asked map[string]bool // asked for and not yet done
	age   int             // how often everything was forgotten

	desk sync.Mutex // guards what follows
	todo []sketch   // the one asked for last at the end
	busy bool
}

// sketch is a picture to be drawn.
type sketch struct {
	name  string
	draw  func() image.Image
	ready func()
	age   int
}

func newEasel(post func(func()), keep int) *easel {
	return &easel{post: post, keep: keep, done: map[string]image.Image{}, asked: map[string]bool{}}
}

// picture returns the picture of a name. Where there is none yet it returns nil and sees to it that it is
// drawn; ready follows when it can be asked for. To draw must need nothing that changes meanwhile.
func (e *easel) picture(name string, draw func() image.Image, ready func()) image.Image {
	if img, ok := e.done[name]; ok {
		return img
	}
	e.desk.Lock()
	defer e.desk.Unlock()
	before := len(e.todo)
	e.todo = slices.DeleteFunc(e.todo, func(s sketch) bool { return s.name == name })
	if e.asked[name] && len(e.todo) == before {
		return nil // it is being drawn
	}
	e.asked[name] = true
	e.todo = append(e.todo, sketch{name, draw, ready, e.age})
	if !e.busy {
		e.busy = true
		go e.work()
	}
	return nil
}

// idle drops what is asked for and not yet begun.
func (e *easel) idle() {
	e.desk.Lock()
	defer e.desk.Unlock()
	for _, s := range e.todo {
		delete(e.asked, s.name)
	}
	e.todo = nil
}

// forget drops every picture, drawn or asked for.
func (e *easel) forget() {
	e.idle()
	e.done, e.order, e.asked = map[string]image.Image{}, nil, map[string]bool{}
	e.age++
}

// working reports whether a picture is on its way.
func (e *easel) working() bool {
	e.desk.Lock()
	defer e.desk.Unlock()
	return e.busy
}

func (e *easel) work() {
	for {
		s, ok := e.next()
		if !ok {
			return
		}
		img := s.draw()
		e.post(func() { e.take(s, img) })
	}
}

func (e *easel) next() (sketch, bool) {
	e.desk.Lock()
	defer e.desk.Unlock()
	last := len(e.todo) - 1
	if e.busy = last >= 0; !e.busy {
		return sketch{}, false
	}
	s := e.todo[last]
	e.todo = e.todo[:last]
	return s, true
}

func (e *easel) take(s sketch, img image.Image) {
	if s.age != e.age {
		return
	}
	delete(e.asked, s.name)
	e.done[s.name] = img
	e.order = append(e.order, s.name)
	for len(e.order) > e.keep {
		delete(e.done, e.order[0])
		e.order = e.order[1:]
	}
	s.ready()
}
