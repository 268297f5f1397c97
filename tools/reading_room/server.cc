// httplib's requests made ours and our answers made its own. Pages are looked up by us, before httplib's patterns: a
// pattern of std::regex recurses with the length of what it is held against.
#include "tools/reading_room/server.h"

#include <fmt/format.h>
#include <httplib.h>

namespace gallipot::room {
namespace {

Request plain_request(const httplib::Request& in) {
  Request out;
  out.method = in.method == "HEAD" ? "GET" : in.method;
  out.path = in.path;
  for (const auto& [name, value] : in.params) out.query.emplace_back(name, value);
  for (const auto& [name, part] : in.files) {
    if (part.filename.empty() && part.content_type.empty())
      out.form.emplace_back(name, part.content);
    else if (!part.content.empty())
      out.uploads[name] = {part.filename, part.content};
  }
  out.host = in.get_header_value("Host");
  out.origin = in.get_header_value("Origin");
  out.site = in.get_header_value("Sec-Fetch-Site");
  out.cookie = in.get_header_value("Cookie");
  out.authorization = in.get_header_value("Authorization");
  return out;
}

void give(const Answer& answer, httplib::Response& out) {
  out.status = answer.status;
  for (const auto& [name, value] : answer.headers) out.set_header(name, value);
  out.set_content(answer.body, answer.type);
}

}  // namespace

struct Server::Sockets {
  httplib::Server server;
};

Server::Server(Room& room, std::unique_ptr<Sockets> sockets, std::string url, int port)
    : sockets_(std::move(sockets)), url_(std::move(url)), port_(port) {
  httplib::Server& server = sockets_->server;
  const auto answer = [&room](const httplib::Request& in, httplib::Response& out) {
    give(room.answer(plain_request(in)), out);
  };
  server.set_pre_routing_handler([answer](const httplib::Request& in, httplib::Response& out) {
    if (in.method == "POST") return httplib::Server::HandlerResponse::Unhandled;  // its body is yet to be read
    answer(in, out);
    return httplib::Server::HandlerResponse::Handled;
  });
  for (const std::string& path : Room::written_paths()) server.Post(path, answer);
  server.set_error_handler([](const httplib::Request&, httplib::Response& out) {
    if (out.body.empty()) out.set_content(fmt::format("This cannot be answered ({}).\n", out.status), "text/plain");
  });
}

Server::~Server() = default;

Outcome<std::unique_ptr<Server>> Server::bind(Room& room, const std::string& address, int port) {
  auto sockets = std::make_unique<Sockets>();
  httplib::Server& server = sockets->server;
  server.new_task_queue = [] { return new httplib::ThreadPool(threads); };
  server.set_payload_max_length(largest_request);
  server.set_read_timeout(10);
  server.set_write_timeout(10);
  server.set_keep_alive_timeout(2);
  server.set_keep_alive_max_count(200);
  server.set_tcp_nodelay(true);
  // Without SO_REUSEPORT, which httplib would set: two rooms on one port must not share its visitors.
  server.set_socket_options([](int socket) {
    const int yes = 1;
    ::setsockopt(socket, SOL_SOCKET, SO_REUSEADDR, &yes, sizeof yes);
  });
  const int bound = port == 0 ? server.bind_to_any_port(address) : server.bind_to_port(address, port) ? port : -1;
  if (bound <= 0)
    return fault(fmt::format("the reading room cannot open at {} port {}", address, port),
                 "another may be using that port: name another with --port, or leave it out");
  const bool v6 = address.find(':') != std::string::npos;
  std::string url = fmt::format("http://{}:{}/", v6 ? "[" + address + "]" : address, bound);
  return std::unique_ptr<Server>(new Server(room, std::move(sockets), std::move(url), bound));
}

void Server::serve() { sockets_->server.listen_after_bind(); }
void Server::stop() { sockets_->server.stop(); }

}  // namespace gallipot::room
