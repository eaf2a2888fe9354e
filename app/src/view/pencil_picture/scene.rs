//! What draws the surface of a pencil on a canvas, through WebGL 2.

use js_sys::{Float32Array, Uint32Array};
use leptos::prelude::document;
use solver::{FinishedPencil, Imprint, Surface, Viewpoint};
use wasm_bindgen::JsCast;
use web_sys::{
    CanvasRenderingContext2d, HtmlCanvasElement, WebGl2RenderingContext as Gl, WebGlBuffer,
    WebGlProgram, WebGlTexture,
};

const CORNER: &str = include_str!("corner.glsl");
const POINT: &str = include_str!("point.glsl");

/// Pixels of the height of letters in their texture, and the most across.
const LETTERS: f64 = 96.0;
const WIDEST: f64 = 4096.0;

/// A pencil ready to be drawn.
pub(super) struct Scene {
    gl: Gl,
    canvas: HtmlCanvasElement,
    program: WebGlProgram,
    corners: WebGlBuffer,
    triangles: WebGlBuffer,
    letters: WebGlTexture,
    pencil: Option<Loaded>,
}

/// What of a pencil is kept here; its triangles are with the graphics card.
struct Loaded {
    pencil: FinishedPencil,
    count: i32,
    depth: f32,
}

impl Scene {
    /// Nothing where the browser has no WebGL 2, or gives none now.
    pub(super) fn new(canvas: &HtmlCanvasElement) -> Option<Self> {
        let gl = canvas.get_context("webgl2").ok()??.dyn_into::<Gl>().ok()?;
        let program = program(&gl)?;
        Some(Self {
            corners: gl.create_buffer()?,
            triangles: gl.create_buffer()?,
            letters: gl.create_texture()?,
            canvas: canvas.clone(),
            program,
            gl,
            pencil: None,
        })
    }

    /// Draws a pencil as it is seen; what has not changed since is not sent again.
    pub(super) fn draw(&mut self, pencil: &FinishedPencil, view: &Viewpoint) {
        if self.gl.is_context_lost() {
            return;
        }
        if self
            .pencil
            .as_ref()
            .is_none_or(|loaded| loaded.pencil != *pencil)
        {
            self.load(pencil);
        }
        self.fit();
        self.show(view);
    }

    fn load(&mut self, pencil: &FinishedPencil) {
        let gl = &self.gl;
        let surface = pencil.surface();
        gl.bind_buffer(Gl::ARRAY_BUFFER, Some(&self.corners));
        let corners = Float32Array::from(surface.corners.as_slice());
        gl.buffer_data_with_array_buffer_view(Gl::ARRAY_BUFFER, &corners, Gl::STATIC_DRAW);
        gl.bind_buffer(Gl::ELEMENT_ARRAY_BUFFER, Some(&self.triangles));
        let triangles = Uint32Array::from(surface.triangles.as_slice());
        gl.buffer_data_with_array_buffer_view(
            Gl::ELEMENT_ARRAY_BUFFER,
            &triangles,
            Gl::STATIC_DRAW,
        );
        let bytes = size_of::<f32>() as i32;
        let stride = Surface::STRIDE as i32 * bytes;
        for (location, size, offset) in [(0, 3, 0), (1, 3, 3), (2, 1, 6)] {
            gl.enable_vertex_attrib_array(location);
            gl.vertex_attrib_pointer_with_i32(
                location,
                size,
                Gl::FLOAT,
                false,
                stride,
                offset * bytes,
            );
        }
        gl.bind_texture(Gl::TEXTURE_2D, Some(&self.letters));
        // Without letters nothing is written over the coat.
        if let Some(canvas) = lettered(&pencil.imprint()) {
            let sent = gl.tex_image_2d_with_u32_and_u32_and_html_canvas_element(
                Gl::TEXTURE_2D,
                0,
                Gl::RGBA as i32,
                Gl::RGBA,
                Gl::UNSIGNED_BYTE,
                &canvas,
            );
            if sent.is_ok() {
                gl.generate_mipmap(Gl::TEXTURE_2D);
            }
        }
        self.pencil = Some(Loaded {
            pencil: pencil.clone(),
            count: surface.triangles.len() as i32,
            depth: surface.length + surface.radius,
        });
    }

    /// As many pixels as the screen has where the canvas stands.
    fn fit(&self) {
        let ratio = web_sys::window()
            .map_or(1.0, |window| window.device_pixel_ratio())
            .min(3.0);
        let pixels = |size: i32| (f64::from(size) * ratio).round().max(1.0) as u32;
        let (width, height) = (
            pixels(self.canvas.client_width()),
            pixels(self.canvas.client_height()),
        );
        if (self.canvas.width(), self.canvas.height()) != (width, height) {
            self.canvas.set_width(width);
            self.canvas.set_height(height);
        }
        self.gl.viewport(0, 0, width as i32, height as i32);
    }

    fn show(&self, view: &Viewpoint) {
        let Some(Loaded {
            pencil,
            count,
            depth,
        }) = &self.pencil
        else {
            return;
        };
        let gl = &self.gl;
        gl.enable(Gl::DEPTH_TEST);
        gl.clear_color(0.0, 0.0, 0.0, 0.0);
        gl.clear(Gl::COLOR_BUFFER_BIT | Gl::DEPTH_BUFFER_BIT);
        gl.use_program(Some(&self.program));
        let at = |name: &str| gl.get_uniform_location(&self.program, name);
        gl.uniform_matrix3fv_with_f32_array(at("turn").as_ref(), false, &view.matrix(pencil));
        let (width, height) = (self.canvas.width() as f32, self.canvas.height() as f32);
        let half = view.span as f32 / 2.0;
        gl.uniform1f(at("along").as_ref(), view.along as f32);
        gl.uniform1f(at("depth").as_ref(), *depth);
        gl.uniform2f(at("sight").as_ref(), half, half * height / width);
        let coat = pencil.coat_colour();
        let ink = if coat.is_light() {
            [0.02; 3]
        } else {
            [0.9, 0.82, 0.6]
        };
        for (name, [red, green, blue]) in [
            ("coat", coat.linear()),
            ("dip", pencil.dip_colour().linear()),
            ("lead", pencil.lead_colour().linear()),
            ("ink", ink),
        ] {
            gl.uniform3f(at(name).as_ref(), red, green, blue);
        }
        let [from, to, low, high] = imprinted(&pencil.imprint());
        gl.uniform4f(at("imprint").as_ref(), from, to, low, high);
        let normal = pencil.imprint().face.normal;
        gl.uniform2f(at("face").as_ref(), normal.x as f32, normal.y as f32);
        gl.draw_elements_with_i32(Gl::TRIANGLES, *count, Gl::UNSIGNED_INT, 0);
    }
}

/// Where letters stand: along the pencil, and beside the foot of the axis, counter-clockwise; a place
/// where there is nothing while there are none.
fn imprinted(imprint: &Imprint) -> [f32; 4] {
    if imprint.has_room() {
        let [low, high] = imprint.edges();
        [imprint.from, imprint.to, low, high].map(|length| length.in_millimetres() as f32)
    } else {
        [-2.0, -1.0, -2.0, -1.0]
    }
}

/// A canvas with the letters of an imprint.
fn lettered(imprint: &Imprint) -> Option<HtmlCanvasElement> {
    if !imprint.has_room() {
        return None;
    }
    let canvas = document()
        .create_element("canvas")
        .ok()?
        .dyn_into::<HtmlCanvasElement>()
        .ok()?;
    let width = (LETTERS * imprint.aspect()).clamp(1.0, WIDEST);
    canvas.set_width(width as u32);
    canvas.set_height(LETTERS as u32);
    let pen = canvas
        .get_context("2d")
        .ok()??
        .dyn_into::<CanvasRenderingContext2d>()
        .ok()?;
    // A room that is too long for the texture is pressed together in it.
    let share = width / (LETTERS * imprint.aspect());
    pen.scale(share, 1.0).ok()?;
    pen.set_font(&format!("700 {}px B612, sans-serif", LETTERS * 0.9));
    pen.set_text_align("center");
    pen.set_text_baseline("middle");
    let room = width / share;
    pen.fill_text_with_max_width(&imprint.text, room / 2.0, LETTERS * 0.54, room)
        .ok()?;
    Some(canvas)
}

fn program(gl: &Gl) -> Option<WebGlProgram> {
    let program = gl.create_program()?;
    for (kind, text) in [(Gl::VERTEX_SHADER, CORNER), (Gl::FRAGMENT_SHADER, POINT)] {
        let shader = gl.create_shader(kind)?;
        gl.shader_source(&shader, text);
        gl.compile_shader(&shader);
        gl.attach_shader(&program, &shader);
    }
    gl.link_program(&program);
    let linked = gl.get_program_parameter(&program, Gl::LINK_STATUS);
    linked.as_bool().unwrap_or(false).then_some(program)
}
