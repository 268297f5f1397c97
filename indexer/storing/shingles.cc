// Shingles by hash.
#include "indexer/storing/shingles.h"

#include <algorithm>

#include "indexer/storing/schema.h"

namespace gallipot {
namespace {

constexpr unsigned shingle_bytes = 5;  // of a term: a million million shingles, so that chance hits are rare

/// The finalizer of MurmurHash3 (Appleby, public domain): every bit of the answer depends on every bit given.
constexpr std::uint64_t mixed(std::uint64_t h) {
  h ^= h >> 33;
  h *= 0xff51afd7ed558ccdULL;
  h ^= h >> 33;
  h *= 0xc4ceb9fe1a85ec53ULL;
  return h ^ (h >> 33);
}

double share(std::size_t part, std::size_t whole) {
  return whole == 0 ? 0 : static_cast<double>(part) / static_cast<double>(whole);
}

void make_set(std::vector<std::uint64_t>& values) {
  std::sort(values.begin(), values.end());
  values.erase(std::unique(values.begin(), values.end()), values.end());
}

}  // namespace

std::vector<std::uint64_t> shingles_of(std::span<const std::uint64_t> marks) {
  std::vector<std::uint64_t> out;
  if (marks.size() < shingle_words) return out;
  out.reserve(marks.size() - shingle_words + 1);
  for (std::size_t i = 0; i + shingle_words <= marks.size(); ++i) {
    std::uint64_t hash = 0;
    for (std::size_t k = 0; k < shingle_words; ++k) hash = mixed(hash ^ marks[i + k]);
    out.push_back(hash >> (64 - 8 * shingle_bytes));
  }
  return out;
}

std::string shingle_term(std::uint64_t shingle) {
  std::string out(schema::shingle);
  for (unsigned i = shingle_bytes; i-- > 0;) out.push_back(static_cast<char>((shingle >> (8 * i)) & 0xFF));
  return out;
}

Resemblance resemblance_of(std::vector<std::uint64_t> first, std::vector<std::uint64_t> second) {
  make_set(first);
  make_set(second);
  std::vector<std::uint64_t> both;
  std::set_intersection(first.begin(), first.end(), second.begin(), second.end(), std::back_inserter(both));
  return {share(both.size(), first.size() + second.size() - both.size()), share(both.size(), first.size()),
          share(both.size(), second.size())};
}

}  // namespace gallipot
