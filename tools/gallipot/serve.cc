// gallipot serve: the reading room, for a browser on this machine.
#include <fmt/format.h>

#include <csignal>
#include <cstdio>
#include <thread>

#include "tools/gallipot/verbs.h"
#include "tools/reading_room/server.h"

namespace gallipot::program {
namespace {

struct Asked : Common {
  int port = 8461;
  std::string dossiers, catalogue, address, token;
};

constexpr std::size_t shortest_token = 12;

/// The signals that end the room, kept from every thread that is made from now on: one alone waits for them.
sigset_t held_signals() {
  sigset_t signals{};
  sigemptyset(&signals);
  sigaddset(&signals, SIGINT);
  sigaddset(&signals, SIGTERM);
  pthread_sigmask(SIG_BLOCK, &signals, nullptr);
  return signals;
}

/// Waits for a signal to end on a thread of its own, and stops the server then.
class Ending {
 public:
  Ending(room::Server& server, const sigset_t& signals)
      : waiting_([signals, &server] {
          int got = 0;
          sigwait(&signals, &got);
          server.stop();
        }) {}
  ~Ending() {
    // The thread takes the signal with sigwait; nothing is ended by it.
    pthread_kill(waiting_.native_handle(), SIGTERM);  // NOLINT(bugprone-bad-signal-to-kill-thread)
  }
  Ending(const Ending&) = delete;
  Ending& operator=(const Ending&) = delete;

 private:
  std::jthread waiting_;
};

Outcome<Exit> serve(const Asked& asked) {
  if (asked.address.empty() != asked.token.empty())
    return fault("a room that is open to other machines needs an address and a token",
                 "give both --address and --token, or neither to keep it to this machine");
  if (!asked.token.empty() && asked.token.size() < shortest_token)
    return fault("the token is too short to keep anyone out",
                 fmt::format("take {} letters and figures or more", shortest_token));
  if (asked.port < 0 || asked.port > 65535)
    return fault(fmt::format("{} is no port", asked.port), "take one from 1024 to 65535, or 0 for any that is free");
  const sigset_t signals = held_signals();
  auto opened = room::Room::open({asked.index, asked.dossiers, asked.catalogue, asked.tables, asked.token});
  if (!opened) return tl::unexpected(opened.error());
  auto server = room::Server::bind(**opened, asked.address.empty() ? "127.0.0.1" : asked.address, asked.port);
  if (!server) return tl::unexpected(server.error());
  say(fmt::format("The reading room is open at {}{}\nEnd it with Ctrl-C.\n", (*server)->url(),
                  asked.token.empty() ? "" : "?token=" + room::in_address(asked.token)));
  std::fflush(stdout);
  const Ending ending(**server, signals);
  (*server)->serve();
  return Exit::answered;
}

}  // namespace

void add_serve(CLI::App& program, Work& work) {
  CLI::App* verb = program.add_subcommand("serve", "Open the reading room: the whole job on pages for a browser");
  const auto asked = std::make_shared<Asked>();
  add_index_option(*verb, *asked);
  verb->add_option("--port", asked->port, "The port; 0 for any that is free")->type_name("N")->capture_default_str();
  verb->add_option("--dossiers", asked->dossiers, "Folder of your dossiers; without it INDEX.dossiers")
      ->type_name("DIR");
  verb->add_option("--catalogue", asked->catalogue,
                   "The shelf list of the books' files, to cut a book anew when you correct it")
      ->type_name("LIST");
  verb->add_option("--address", asked->address, "Open to other machines at this address; needs --token")
      ->type_name("ADDRESS");
  verb->add_option("--token", asked->token, "What visitors from other machines must show")->type_name("WORD");
  add_tables_option(*verb, *asked);
  verb->footer("Example:\n  gallipot serve --index shelf\n\nThen open the address that it prints in a browser.");
  verb->callback([&work, asked] { work = [asked] { return serve(*asked); }; });
}

}  // namespace gallipot::program
