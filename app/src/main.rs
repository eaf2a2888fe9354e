//! The program, which starts twice from the same file: as the page, and as its workers.

fn main() {
    console_error_panic_hook::set_once();
    if app::worker::is_here() {
        app::worker::run();
    } else {
        leptos::mount::mount_to_body(app::view::Slatwright);
    }
}
