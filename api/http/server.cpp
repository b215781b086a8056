// The only source that includes httplib. Its defaults answer in 44 ms (Nagle), let eight idle
// connections hold up everybody for 5 s and take bodies of any size: all set here.
#include "api/http/server.hpp"

#include <arpa/inet.h>
#include <fmt/format.h>
#include <httplib.h>

#include <atomic>
#include <chrono>
#include <thread>

#include "api/http/dispatch.hpp"
#include "api/wire/request_json.hpp"

namespace shoplore {

namespace {

constexpr std::size_t kThreads = 32;
// The library's five would make a page that asks often connect anew each time.
constexpr std::size_t kRepliesPerConnection = 100;

// The host of a Host header: without the port and the brackets of IPv6.
std::string_view host_of(std::string_view header) {
  if (!header.empty() && header.front() == '[') {
    const auto end = header.find(']');
    return end == std::string_view::npos ? "" : header.substr(1, end - 1);
  }
  return header.substr(0, header.find(':'));
}

void send(const Reply& reply, httplib::Response& response) {
  response.status = reply.status;
  for (const auto& [name, value] : reply.headers) response.set_header(name, value);
  if (reply.status != 304 && reply.status != 204)
    response.set_content(reply.body, reply.content_type);
}

// What is wrong with the request before its body is read; such a connection is closed, because
// the unread body would be taken for the next request.
std::optional<Reply> refused_early(const httplib::Request& request) {
  if (request.has_header("Host") && !is_loopback(host_of(request.get_header_value("Host")))) {
    return refusal({ErrorCode::kInvalidInput, "Host", "this server answers for loopback only"},
                   421);
  }
  // Their size is not known before they are read, and the library bounds neither.
  if (request.has_header("Transfer-Encoding")) {
    return refusal(
        {ErrorCode::kInvalidInput, "Transfer-Encoding", "send the body whole, with Content-Length"},
        411);
  }
  if (request.has_header("Content-Encoding")) {
    return refusal({ErrorCode::kInvalidInput, "Content-Encoding", "send the body as it is"}, 415);
  }
  return std::nullopt;
}

// The library refused the request itself: malformed, a body over the limit, a path with a line
// end in it.
Reply library_refusal(int status) {
  if (status == 413) {
    const auto text = fmt::format("at most {} bytes are taken", kMaxRequestBytes);
    return refusal({ErrorCode::kTooLarge, "body", text}, status);
  }
  if (status == 404) {
    return refusal({ErrorCode::kNotFound, "path", "there is nothing at this path"}, status);
  }
  if (status == 414) {
    return refusal({ErrorCode::kTooLarge, "path", "the address is too long"}, status);
  }
  return refusal({ErrorCode::kInvalidInput, "request", "is not a well-formed HTTP request"},
                 status);
}

}  // namespace

struct Server::Impl {
  LiveRecords& records;
  httplib::Server http;
  std::atomic<bool> ended = false;  // run() came back

  explicit Impl(LiveRecords& the_records) : records(the_records) {
    limits();
    http.set_pre_routing_handler([](const httplib::Request& request, auto& response) {
      // Nothing here is sent in parts, and a server may ignore Range (RFC 9110 section 14.2). The
      // library would cut the body of a reply all the same and leave the status at 200.
      const_cast<httplib::Request&>(request).ranges.clear();
      const auto refused = refused_early(request);
      if (!refused) return httplib::Server::HandlerResponse::Unhandled;
      send(*refused, response);
      response.set_header("Connection", "close");
      return httplib::Server::HandlerResponse::Handled;
    });
    const auto handle = [this](const httplib::Request& request, httplib::Response& response) {
      send(dispatch(records, incoming(request)), response);
    };
    // Every method goes through dispatch, which knows what to allow; HEAD comes with GET.
    using Handler = httplib::Server::Handler;
    http.Get(".*", Handler(handle));
    http.Options(".*", Handler(handle));
    http.Post(".*", Handler(handle));
    http.Put(".*", Handler(handle));
    http.Patch(".*", Handler(handle));
    http.Delete(".*", Handler(handle));
    http.set_error_handler([](const httplib::Request&, httplib::Response& response) {
      if (response.body.empty()) send(library_refusal(response.status), response);
    });
    http.set_exception_handler([](const auto&, httplib::Response& response, auto) {
      send(refusal({ErrorCode::kInternal, "", "the server failed in an unexpected way"}), response);
    });
  }

  void limits() {
    http.new_task_queue = [] { return new httplib::ThreadPool(kThreads); };
    http.set_tcp_nodelay(true);
    http.set_keep_alive_timeout(1);
    http.set_keep_alive_max_count(kRepliesPerConnection);
    http.set_read_timeout(2);
    http.set_write_timeout(5);
    http.set_payload_max_length(kMaxRequestBytes);
    // The library's own default shares the port with any other program that asks for it.
    http.set_socket_options([](int socket) {
      const int yes = 1;
      setsockopt(socket, SOL_SOCKET, SO_REUSEADDR, &yes, sizeof(yes));
    });
  }

  // Every value of a header that may be a list or must not be doubled, as one list.
  static std::optional<std::string> whole_header(const httplib::Request& request,
                                                 const char* name) {
    const std::size_t count = request.get_header_value_count(name);
    if (count == 0) return std::nullopt;
    std::string values = request.get_header_value(name);
    for (std::size_t i = 1; i < count; ++i) values += ", " + request.get_header_value(name, i);
    return values;
  }

  static Incoming incoming(const httplib::Request& request) {
    Incoming incoming;
    incoming.method = request.method;
    incoming.path = request.path;
    // The library's own reading of the query forgives too much.
    const auto mark = request.target.find('?');
    if (mark != std::string::npos) incoming.raw_query = request.target.substr(mark + 1);
    incoming.content_type = request.get_header_value("Content-Type");
    incoming.if_match = whole_header(request, "If-Match").value_or("");
    incoming.if_none_match = whole_header(request, "If-None-Match").value_or("");
    incoming.idempotency_key = whole_header(request, "Idempotency-Key");
    incoming.body = request.body;
    return incoming;
  }
};

Server::Server(LiveRecords& records) : impl_(std::make_unique<Impl>(records)) {}
Server::~Server() = default;

Result<int> Server::bind(const std::string& host, int port) {
  if (!is_loopback(host)) return fail(not_loopback(host));
  if (port == 0) {
    const int chosen = impl_->http.bind_to_any_port(host.c_str());
    if (chosen > 0) return chosen;
  } else if (impl_->http.bind_to_port(host.c_str(), port)) {
    return port;
  }
  return fail(ErrorCode::kConflict, fmt::format("{}:{}", host, port),
              "cannot be listened on; is another server running there?");
}

void Server::run() {
  impl_->http.listen_after_bind();
  impl_->ended = true;
}

void Server::stop() {
  // The library forgets a stop that comes before it runs: a signal just after the start.
  while (!impl_->http.is_running() && !impl_->ended) {
    std::this_thread::sleep_for(std::chrono::milliseconds(1));
  }
  impl_->http.stop();
}

Error not_loopback(std::string_view host) {
  return {ErrorCode::kInvalidInput, "--host",
          fmt::format("\"{}\" is not loopback; beyond this machine it needs users and TLS, which "
                      "are not there yet",
                      host)};
}

bool is_loopback(std::string_view host) {
  if (host == "localhost" || host == "::1") return true;
  in_addr address{};
  if (inet_pton(AF_INET, std::string(host).c_str(), &address) != 1) return false;
  return (ntohl(address.s_addr) >> 24) == 127;
}

}  // namespace shoplore
