"""What any drawing is put on the page with: strokes, hatching, words, dimensions, and room for them."""
