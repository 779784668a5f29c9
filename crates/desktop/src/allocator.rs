//! What the allocator learns at the start.

/// As many bytes as the triangles of the largest maps take in a frame; glibc learns from no block over 32 MiB.
const FRAME_BYTES: usize = 24 << 20;

/// Lets the allocator keep what a frame frees for the next one.
///
/// Every frame takes some megabytes for its triangles and frees them again. glibc gives such blocks back to the system each
/// time, and every page of them is fetched anew in the next frame, a fifth of its time, until it has seen a block as
/// large freed. Nothing is written into this one, so it costs no memory; other allocators learn nothing from it.
pub(crate) fn keep_freed() {
    drop(std::hint::black_box(Vec::<u8>::with_capacity(FRAME_BYTES)));
}
