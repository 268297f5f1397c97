// The reading room on a socket of loopback: sizes are bounded, forms arrive, and it ends when it is told to.
#include "tools/reading_room/server.h"

#include <gtest/gtest.h>
#include <httplib.h>
#include <unistd.h>

#include <filesystem>
#include <thread>

namespace gallipot::room {
namespace {

namespace fs = std::filesystem;

class ServedRoom : public ::testing::Test {
 protected:
  void SetUp() override {
    home_ = fs::temp_directory_path() / ("gallipot-served-" + std::to_string(::getpid()));
    fs::create_directories(home_);
    RoomOptions options;
    options.index = (home_ / "none").string();
    room_ = Room::open(options).value();
    server_ = Server::bind(*room_, "127.0.0.1", 0).value();
    serving_ = std::thread([this] { server_->serve(); });
    httplib::Client client("127.0.0.1", server_->port());
    for (int i = 0; i < 200 && !client.Get("/api/jobs"); ++i)
      std::this_thread::sleep_for(std::chrono::milliseconds(10));
  }
  void TearDown() override {
    server_->stop();
    serving_.join();
    fs::remove_all(home_);
  }

  httplib::Client client() const {
    httplib::Client out("127.0.0.1", server_->port());
    out.set_read_timeout(10);
    return out;
  }

  fs::path home_;
  std::unique_ptr<Room> room_;
  std::unique_ptr<Server> server_;
  std::thread serving_;
};

TEST_F(ServedRoom, AnswersAndPrintsItsAddress) {
  EXPECT_EQ(server_->url(), "http://127.0.0.1:" + std::to_string(server_->port()) + "/");
  auto asking = client();
  const auto page = asking.Get("/");
  ASSERT_TRUE(page);
  EXPECT_EQ(page->status, 200);
  EXPECT_NE(page->get_header_value("Content-Security-Policy"), "");
  const auto head = asking.Head("/");
  ASSERT_TRUE(head);
  EXPECT_EQ(head->body, "");
  EXPECT_EQ(asking.Get("/nowhere")->status, 404);
  EXPECT_EQ(asking.Get("/", {{"Host", "evil.example"}})->status, 403);
}

TEST_F(ServedRoom, FormsArriveAndOthersAreRefused) {
  auto asking = client();
  const httplib::MultipartFormDataItems form = {{"secret", room_->secret(), "", ""},
                                                {"title", "Damsons & Plums", "", ""}};
  const auto done = asking.Post("/write/dossier", form);
  ASSERT_TRUE(done);
  EXPECT_EQ(done->status, 303);
  EXPECT_EQ(done->get_header_value("Location"), "/dossier?name=damsons-plums");
  const httplib::MultipartFormDataItems wrong = {{"secret", "00000000000000000000000000000000", "", ""},
                                                 {"title", "X", "", ""}};
  EXPECT_EQ(asking.Post("/write/dossier", wrong)->status, 403);
  EXPECT_EQ(asking.Post("/write/dossier", {{"Origin", "http://evil.example"}}, form)->status, 403);
  EXPECT_NE(asking.Put("/write/dossier", "x", "text/plain")->status, 200);
  EXPECT_NE(asking.Delete("/dossier")->status, 200);
}

TEST_F(ServedRoom, WhatIsTooLargeIsRefused) {
  auto asking = client();
  const httplib::MultipartFormDataItems form = {
      {"secret", room_->secret(), "", ""}, {"file", std::string(largest_request + 1, 'x'), "book.txt", "text/plain"}};
  const auto done = asking.Post("/write/book", form);
  if (done) EXPECT_EQ(done->status, 413);
  EXPECT_FALSE(fs::exists(home_ / "none.books"));
  auto again = client();
  const auto long_address = again.Get("/" + std::string(9000, 'x'));
  if (long_address) EXPECT_EQ(long_address->status, 414);
  auto third = client();
  ASSERT_TRUE(third.Get("/"));
  EXPECT_EQ(third.Get("/")->status, 200) << "and it goes on";
}

TEST_F(ServedRoom, APortIsTakenOnce) {
  const auto second = Server::bind(*room_, "127.0.0.1", server_->port());
  ASSERT_FALSE(second.has_value());
  EXPECT_NE(second.error().sentence().find("--port"), std::string::npos);
}

}  // namespace
}  // namespace gallipot::room
