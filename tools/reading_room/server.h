// The reading room on a socket.
#pragma once

#include <memory>
#include <string>

#include "tools/reading_room/room.h"

namespace gallipot::room {

class Server {
 public:
  /// Binds to `address` ("127.0.0.1") and `port` (0: any that is free). Faults: the port is taken, no such address.
  static Outcome<std::unique_ptr<Server>> bind(Room& room, const std::string& address, int port);
  ~Server();
  Server(const Server&) = delete;
  Server& operator=(const Server&) = delete;

  /// "http://127.0.0.1:8461/"
  const std::string& url() const { return url_; }
  int port() const { return port_; }
  /// Answers until `stop` is called, from any thread or a signal handler.
  void serve();
  void stop();

 private:
  struct Sockets;
  Server(Room& room, std::unique_ptr<Sockets> sockets, std::string url, int port);
  std::unique_ptr<Sockets> sockets_;
  std::string url_;
  int port_;
};

/// The largest request that is taken: a book's file and its particulars.
inline constexpr std::size_t largest_request = 64u << 20;
/// Requests answered at one time; more wait.
inline constexpr int threads = 24;

}  // namespace gallipot::room
