//! A server for the static folder: right types, compressed copies, caching by name.

use std::io::ErrorKind;
use std::net::{IpAddr, SocketAddr};
use std::path::Path;

use anyhow::{Context, Result, bail};
use axum::Router;
use axum::extract::Request;
use axum::http::{HeaderValue, header};
use axum::middleware::{self, Next};
use axum::response::{Redirect, Response};
use axum::routing::get;
use tokio::net::TcpListener;
use tower_http::services::ServeDir;

use crate::assets::is_hashed;
use crate::dist;
use crate::workspace::Workspace;

/// How to serve.
#[derive(clap::Args)]
pub(crate) struct Options {
    /// Port to listen on; the next free one when it is taken
    #[arg(long, default_value_t = 8080)]
    port: u16,
    /// Address to listen on; 0.0.0.0 lets other machines in
    #[arg(long, default_value = "127.0.0.1")]
    host: IpAddr,
    /// Open the page in the browser of this machine
    #[arg(long)]
    open: bool,
    /// Serve what `dist` holds already
    #[arg(long)]
    no_build: bool,
    #[command(flatten)]
    build: dist::Options,
    /// Serve below a path, as a static host may, such as /club/lessons/
    #[arg(long, default_value = "/")]
    prefix: String,
}

/// Builds the page and serves it until stopped.
pub(crate) fn run(workspace: &Workspace, options: &Options) -> Result<()> {
    if !options.no_build {
        dist::build(workspace, options.build)?.print();
    }
    let server = Server::bind(
        &workspace.dist(),
        &options.prefix,
        options.host,
        options.port,
    )?;
    println!("Dipwise is at {} (Ctrl-C stops it)", server.address);
    if options.open
        && let Err(error) = open::that_detached(&server.address)
    {
        println!("No browser could be opened: {error}");
    }
    server.serve()
}

/// A server that has its port, and so can be told to others before it serves.
pub(crate) struct Server {
    /// Where the page is.
    pub(crate) address: String,
    runtime: tokio::runtime::Runtime,
    listener: TcpListener,
    router: Router,
}

/// How many ports are tried, counting upwards.
const PORTS: u16 = 100;

impl Server {
    /// Takes the port, or the next free one; port 0 takes any.
    pub(crate) fn bind(folder: &Path, prefix: &str, host: IpAddr, port: u16) -> Result<Self> {
        if !folder.join("index.html").is_file() {
            bail!("there is no page to serve yet: run `cargo xtask dist` first");
        }
        let prefix = format!("/{}", prefix.trim_matches('/'));
        let runtime = tokio::runtime::Builder::new_current_thread()
            .enable_io()
            .build()?;
        let listener = runtime.block_on(listen(host, port))?;
        let end = if prefix == "/" { "" } else { "/" };
        let address = format!("http://{}{prefix}{end}", listener.local_addr()?);
        Ok(Self {
            address,
            router: router(folder, &prefix),
            runtime,
            listener,
        })
    }

    /// Serves until the process ends.
    pub(crate) fn serve(self) -> Result<()> {
        let Self {
            runtime,
            listener,
            router,
            ..
        } = self;
        runtime
            .block_on(axum::serve(listener, router).into_future())
            .context("the server stopped")
    }
}

async fn listen(host: IpAddr, first: u16) -> Result<TcpListener> {
    let last = first.saturating_add(PORTS);
    for port in first..=last {
        match TcpListener::bind(SocketAddr::new(host, port)).await {
            Ok(listener) => return Ok(listener),
            Err(error) if error.kind() == ErrorKind::AddrInUse => {}
            Err(error) => {
                return Err(error).with_context(|| format!("could not listen on {host}:{port}"));
            }
        }
    }
    bail!("every port from {first} to {last} is taken: choose another by --port")
}

fn router(folder: &Path, prefix: &str) -> Router {
    let files = ServeDir::new(folder)
        .precompressed_br()
        .precompressed_gzip();
    let router = if prefix == "/" {
        Router::new().fallback_service(files)
    } else {
        let page = format!("{prefix}/");
        let redirect = get(move || async move { Redirect::temporary(&page) });
        Router::new()
            .route("/", redirect.clone())
            .route(prefix, redirect)
            .nest_service(&format!("{prefix}/"), files)
    };
    router.layer(middleware::from_fn(headers))
}

/// A hashed name never changes its content, so it may be kept for ever; the rest is asked for
/// anew each time.
async fn headers(request: Request, next: Next) -> Response {
    let hashed = is_hashed(request.uri().path());
    let mut response = next.run(request).await;
    let keep = hashed && response.status().is_success();
    let caching = if keep {
        "public, max-age=31536000, immutable"
    } else {
        "no-cache"
    };
    let headers = response.headers_mut();
    headers.insert(header::CACHE_CONTROL, HeaderValue::from_static(caching));
    // A frame of a course page may have no origin of its own; what it asks for is public.
    headers.insert(
        header::ACCESS_CONTROL_ALLOW_ORIGIN,
        HeaderValue::from_static("*"),
    );
    headers.insert(
        header::X_CONTENT_TYPE_OPTIONS,
        HeaderValue::from_static("nosniff"),
    );
    response
}

#[cfg(test)]
mod tests {
    use std::fs;
    use std::io::{Read, Write};
    use std::net::{Ipv4Addr, TcpStream};

    use tempfile::TempDir;

    use super::*;

    const LOCAL: IpAddr = IpAddr::V4(Ipv4Addr::LOCALHOST);
    const HASHED: &str = "web_bg-0123456789abcdef.wasm";

    /// A page for as long as it is held.
    fn page() -> TempDir {
        let folder = tempfile::tempdir().unwrap();
        for (file, content) in [
            ("index.html", "page"),
            ("index.html.br", "page in Brotli"),
            ("service-worker.js", "keep"),
            (HASHED, "module"),
            (&format!("{HASHED}.br"), "module in Brotli"),
            (&format!("{HASHED}.gz"), "module in gzip"),
        ] {
            fs::write(folder.path().join(file), content).unwrap();
        }
        folder
    }

    /// Serves a page below a prefix from a thread of its own, and says on which port.
    fn serve(page: &TempDir, prefix: &str) -> u16 {
        let server = Server::bind(page.path(), prefix, LOCAL, 0).unwrap();
        let port = server.listener.local_addr().unwrap().port();
        assert!(server.address.ends_with(prefix), "{}", server.address);
        std::thread::spawn(|| server.serve());
        port
    }

    /// The head, in lower case, and the body of an answer.
    fn fetch(port: u16, path: &str, encodings: &str) -> (String, String) {
        let mut stream = TcpStream::connect((LOCAL, port)).unwrap();
        let request = format!(
            "GET {path} HTTP/1.1\r\nhost: localhost\r\naccept-encoding: {encodings}\r\n\
             connection: close\r\n\r\n"
        );
        stream.write_all(request.as_bytes()).unwrap();
        let mut answer = String::new();
        stream.read_to_string(&mut answer).unwrap();
        let (head, body) = answer.split_once("\r\n\r\n").unwrap();
        (head.to_lowercase(), body.to_owned())
    }

    #[test]
    fn a_module_goes_out_compressed_with_its_type_and_may_be_kept() {
        let page = page();
        let port = serve(&page, "/");
        let (head, body) = fetch(port, &format!("/{HASHED}"), "gzip, br");
        assert_eq!(body, "module in Brotli");
        for line in [
            "200 ok",
            "content-type: application/wasm",
            "content-encoding: br",
            "cache-control: public, max-age=31536000, immutable",
            "x-content-type-options: nosniff",
            "access-control-allow-origin: *",
        ] {
            assert!(head.contains(line), "{line} is not in {head}");
        }
        assert_eq!(
            fetch(port, &format!("/{HASHED}"), "gzip").1,
            "module in gzip"
        );
        assert_eq!(fetch(port, &format!("/{HASHED}"), "identity").1, "module");
    }

    #[test]
    fn the_page_and_its_worker_are_asked_for_anew() {
        let page = page();
        let port = serve(&page, "/");
        for (path, body) in [
            ("/", "page"),
            ("/index.html", "page"),
            ("/service-worker.js", "keep"),
        ] {
            let (head, got) = fetch(port, path, "identity");
            assert_eq!(got, body);
            assert!(head.contains("cache-control: no-cache"), "{head}");
        }
    }

    #[test]
    fn what_is_missing_is_not_kept() {
        let page = page();
        let (head, _) = fetch(serve(&page, "/"), "/old-0123456789abcdef.js", "br");
        assert!(head.contains("404") && head.contains("no-cache"), "{head}");
    }

    #[test]
    fn a_prefix_holds_the_page_and_the_way_there() {
        let page = page();
        let port = serve(&page, "/club/lessons/");
        assert_eq!(fetch(port, "/club/lessons/", "identity").1, "page");
        assert_eq!(
            fetch(port, &format!("/club/lessons/{HASHED}"), "identity").1,
            "module"
        );
        for path in ["/", "/club/lessons"] {
            let (head, _) = fetch(port, path, "identity");
            assert!(head.contains("location: /club/lessons/"), "{head}");
        }
        assert!(
            fetch(port, &format!("/{HASHED}"), "identity")
                .0
                .contains("404")
        );
    }

    #[test]
    fn a_taken_port_gives_the_next_free_one() {
        let page = page();
        let first = Server::bind(page.path(), "/", LOCAL, 0).unwrap();
        let taken = first.listener.local_addr().unwrap().port();
        let second = Server::bind(page.path(), "/", LOCAL, taken).unwrap();
        assert!(second.listener.local_addr().unwrap().port() > taken);
    }

    #[test]
    fn an_empty_folder_is_not_served() {
        let error = Server::bind(Path::new("no-such-folder"), "/", LOCAL, 0)
            .err()
            .unwrap();
        assert!(error.to_string().contains("cargo xtask dist"), "{error}");
    }
}
