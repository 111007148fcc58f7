// Package geometry is the map of the rooms below it; it holds no code.
//
// Axes: x to the figure's right, y to its front, z up from the floor; millimetres and radians.
//
//	unit, plane, space   units; points and rings in the plane; points in space
//	parallel             the same work for many numbers on all processors
//	curve                monotone and periodic interpolation, root finding, taut tapes
//	section              one closed horizontal slice of a figure, and a slice from tape readings
//	surface              the skin through sections: points, normals, tapes, slices
//	flatten              a patch of skin laid in the plane, with its strain
//	view                 skin to outlines and shaded pictures' geometry
//	-- above: mathematics; below: the words of the trade --
//	measure              what the tape said, and its checks
//	torso                measurements to a figure: levels, sections, skin, landmarks
//	padding              layers of wadding between a form and the wanted figure
//	cover                the smooth cover drawn over a mount, divided into panels
//	skirt                how a skirt hangs, what holds it, and the silhouettes of its time
//	sleeve               arms, tubes and puffs of net that hold a sleeve
//	pads                 loose pads for shoulders, bust and hips; the neck disc
//	foam                 slices of plank for a form that is built
//	fit                  clearance, strain and its chance, standing
//	rest                 a garment put away: lying flat, folded over pads, on a roll
//	trace                a silhouette traced over a photograph, and a figure fitted to it
//	shapetest            cylinder, cone, torus, sphere: known answers for tests
//
// Imports run downward only, and nothing here knows files, widgets or paper.
package geometry
