"""Plans in words and pictures: patterns in every form, the designer's sheet, drawings, lessons."""
