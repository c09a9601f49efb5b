/** How many are kept. A mesh of 1 M triangles is about 20 MB, and each worker has its own shelf. */
export const SHELF_PLACES = 3
